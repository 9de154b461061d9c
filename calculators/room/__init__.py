"""Room and safety: air, vapour, dust, noise. Estimates that defer to code and licence."""
