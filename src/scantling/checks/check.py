"""What a check is: one rule of engineering or fit, read through a reader, giving one finding per subject."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

from scantling.build.reader import Reader
from scantling.findings import Finding, NotLookedAt
from scantling.model.design import Design


@dataclass(frozen=True)
class TotalUse:
    """A declared total that a check uses, and which way is worse: a larger sum (``more``) or a smaller (``less``)."""

    name: str
    worse: Literal["more", "less"]


@dataclass(frozen=True)
class Check:
    """One check.

    code : stable, ``BELT-03``, never reused    title : in trade words
    subjects : identifiers it can be asked about    run : its rule; pure, reads only through the reader
    source : of the formula    total : where it uses one
    costly : run on the solver's answer instead of being tabulated
    informs : never unsound and never unknown, so no choice depends on it and no table is grown
    """

    code: str
    title: str
    subjects: Callable[[Design], tuple[str, ...]]
    run: Callable[[Reader, str], Finding | NotLookedAt]
    source: str
    total: TotalUse | None = None
    costly: bool = False
    informs: bool = False
