"""The handbook without a network, and from one edition to the next."""
