"""The packages that hold calculators. The build writes a shop's own into the browser's copy."""

PACKAGES = ["calculators"]
