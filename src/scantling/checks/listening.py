"""A reader that keeps what rules were judged by, so that a rule can be solved backwards and explained."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from scantling.build.reader import Catalogue, Reader
from scantling.checks.sentences import Also
from scantling.checks.trials import Trial
from scantling.model.build import Key


@dataclass(frozen=True)
class Asked:
    """One rule with its figures and the limit that holds, as a check judged it.

    also : the further numbers of its sentence    is_own : the limit is the design's own
    """

    code: str
    subject: str
    trial: Trial
    unit: str
    also: Also
    is_own: bool = False


class Listener(Reader):
    """A reader of a whole build that keeps, in order, every rule that is judged through it."""

    def __init__(self, case: Catalogue, answers: Mapping[Key, str]) -> None:
        """Read ``case`` under ``answers``."""
        super().__init__(case, answers)
        self.asked: list[Asked] = []


def hear(reader: Reader, code: str, subject: str, trial: Trial, unit: str) -> None:
    """Keep a further rule of a check that is not the one it is judged by now, where somebody listens."""
    if isinstance(reader, Listener):
        reader.asked.append(Asked(code, subject, trial, unit, {}))
