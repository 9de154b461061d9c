"""Paper: what the handbook knows as cards for the bench, build sheets and tables in files."""
