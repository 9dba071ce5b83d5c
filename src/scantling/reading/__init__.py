"""Files to model: validated, immutable, every value with its place; all faults at once."""
