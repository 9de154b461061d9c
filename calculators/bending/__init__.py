"""Bending and linings: strain, kerfs."""
