"""Begin: the smallest design that already says something."""

from __future__ import annotations

from importlib.resources import files

FIRST = "design.yaml"


def starting_files() -> dict[str, bytes]:
    """Return the files of a new design, by name in its folder."""
    starter = files(__package__ or "") / "starter"
    return {
        FIRST: (starter / "design.yaml").read_bytes(),
        "workshops/mine.yaml": (starter / "workshop.yaml").read_bytes(),
    }
