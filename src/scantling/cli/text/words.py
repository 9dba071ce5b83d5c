"""Small words for tables."""

from __future__ import annotations


def tidy(name: str) -> str:
    """Return an identifier as words: ``NOT_LOOKED_AT`` is "not looked at"."""
    return name.lower().replace("_", " ")
