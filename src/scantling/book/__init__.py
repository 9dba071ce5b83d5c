"""Book: one document tree, printed as PDF."""
