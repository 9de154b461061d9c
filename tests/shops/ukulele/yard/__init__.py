"""Yard: what is worked out when wood is bought."""
