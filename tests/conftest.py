"""Settings of every property test."""

from hypothesis import settings

# How fast something is stands in the benchmark; a machine that is busy fails no test.
settings.register_profile("benchrule", deadline=None)
settings.load_profile("benchrule")
