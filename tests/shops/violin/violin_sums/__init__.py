"""Violin sums: what this workshop works out beside the rest."""
