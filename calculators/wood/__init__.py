"""Wood: moisture, movement, weight."""
