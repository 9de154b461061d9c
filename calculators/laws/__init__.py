"""Published relations that calculators share: plain functions, each with its source and range."""
