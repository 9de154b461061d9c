"""Plates and braces: stiffness, load, arch, press."""
