"""What a total is: a sum of whole-number contributions of places, which a check may use without reading each place."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass

from scantling.build.reader import Catalogue, Reader
from scantling.model.design import Design
from scantling.quantities import Figure


@dataclass(frozen=True)
class Total:
    """A declared total.

    scale : whole units per unit of the figure (1000 for grams of a mass in kg)
    subjects : identifiers that have it    terms : the places that contribute to a subject's total
    contribution : of one place, in the figure's unit (a pure function of a reader); its nominal value enters the sum
    fixed : what no place holds, with its band, which holds for the whole sum
    """

    name: str
    unit: str
    scale: int
    subjects: Callable[[Design], tuple[str, ...]]
    terms: Callable[[Design, str], tuple[str, ...]]
    contribution: Callable[[Reader, str, str], Figure]
    fixed: Callable[[Catalogue, str], Figure]
