"""Plan: lays out what derive and choose decided."""
