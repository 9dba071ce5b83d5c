"""Single questions without a file: each makes the smallest design that poses it and runs the real checks on it."""
