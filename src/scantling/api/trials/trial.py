"""What a trial is: named questions in text, a design made of them, and the codes of the checks that answer."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Any

Given = Mapping[str, str]


@dataclass(frozen=True)
class Ask:
    """One thing that a trial may be told.

    name : as on the command line, without dashes    dimension : of ``quantities``, or ``text`` or ``count``
    """

    name: str
    dimension: str
    help: str
    needed: bool = False


@dataclass(frozen=True)
class Trial:
    """One kind of single question.

    asks : what it may be told    design : from the given texts to the sections of a design, as a file would hold them
    codes : the checks whose findings are the answer    notes : sentences about what was assumed by the trial itself
    workshop : from the given texts to sections of a workshop
    """

    name: str
    title: str
    example: str
    asks: tuple[Ask, ...]
    design: Callable[[Given], dict[str, Any]]
    codes: tuple[str, ...]
    notes: Callable[[Given], tuple[str, ...]] = lambda _: ()
    workshop: Callable[[Given], dict[str, Any]] = lambda _: {}


def fields(given: Given, **names: str) -> dict[str, str]:
    """Return ``{field: text}`` for those of ``names`` (field = ask) that were given; ``_`` stands for a dash."""
    return {field.replace("_", "-"): given[ask] for field, ask in names.items() if ask in given}
