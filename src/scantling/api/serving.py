"""Whether a stand-in serves."""

from __future__ import annotations

from dataclasses import dataclass

from scantling.findings import Verdict


@dataclass(frozen=True)
class Serving:
    """Whether one option of a place serves, all else kept.

    against : codes and subjects of checks that are not admissible with it and are with the part in force
    """

    place: str
    part: str
    verdict: Verdict
    against: tuple[str, ...]
    in_force: bool
