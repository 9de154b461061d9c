"""Glueing: how long it stays open, how hard to clamp."""
