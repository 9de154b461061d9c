"""Strings and set-up: tension, compensation, action, settling."""
