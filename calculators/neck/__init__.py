"""Neck and fretboard: fret places, pitch, shaft, radius, spacing, slots."""
