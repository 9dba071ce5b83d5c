"""A build: for every open question of a design in a workshop, one answer. All else is derived from it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Literal, NamedTuple


class Key(NamedTuple):
    """One open question.

    kind : ``part`` (which part fills a place; asked of the first place of an ``alike`` group),
        ``get`` (how the pieces of a place are got), ``screw`` (which screw a joint takes)
    subject : identifier of the place or joint
    """

    kind: Literal["part", "get", "screw"]
    subject: str

    def __str__(self) -> str:
        """Return ``part of y-rod``."""
        return f"{self.kind} of {self.subject}"


@dataclass(frozen=True)
class Build:
    """A design in a workshop for ``copies`` machines with every question answered; answers sorted by key."""

    answers: tuple[tuple[Key, str], ...]
    copies: int = 1

    @classmethod
    def of(cls, answers: Mapping[Key, str], copies: int = 1) -> Build:
        """Return the build with these answers, in the one order that makes equal builds equal."""
        return cls(tuple(sorted(answers.items())), copies)

    def as_dict(self) -> dict[Key, str]:
        """Return the answers as a new dictionary."""
        return dict(self.answers)

    def replacing(self, answers: Mapping[Key, str]) -> Build:
        """Return the build with some answers changed."""
        return Build.of({**self.as_dict(), **answers}, self.copies)
