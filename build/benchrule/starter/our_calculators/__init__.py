"""Our calculators: what this shop works out beside Benchrule's own."""
