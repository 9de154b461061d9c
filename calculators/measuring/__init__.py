"""Measuring: uncertainty, guard bands, how many to check."""
