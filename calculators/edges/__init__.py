"""Edges and inlay: channels, mitres, pockets."""
