"""Benchrule: the documentation build that turns a shop's procedures into a handbook."""

__version__ = "0.1.0"
