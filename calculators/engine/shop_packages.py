"""Where the calculators are, and which the shop does without. The build writes the browser's copy of this file.

In a checkout ``PACKAGES`` are looked through; the browser's copy names every module, because a
packed archive is not looked through quickly.
"""

PACKAGES = ["calculators"]
LEFT_OUT: list[str] = []
MODULES: dict[str, str] = {}
