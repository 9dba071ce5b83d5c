"""Compare: the difference of two plans is its consequences."""
