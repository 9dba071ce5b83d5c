"""Checks: one small file a subject; the explicit list is in ``all.py``."""
