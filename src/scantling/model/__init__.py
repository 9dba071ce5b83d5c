"""Frozen data: design, workshop, build. No behaviour, no files."""
