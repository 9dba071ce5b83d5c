"""Scantling: from a design, a workshop and a number of copies to the cheapest machine that still works."""

__version__ = "0.1.0"
