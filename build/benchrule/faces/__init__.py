"""Turns the handbook's objects into HTML: text in, text out, no MkDocs."""
