"""Findings that a design lives with: of a check, on something that is described, for a reason."""

from __future__ import annotations

import re

from scantling.reading.document import noun
from scantling.reading.scene import Scene

_CODE = re.compile(r"[A-Z]+-[0-9]{2}")
_SECTIONS = {noun(section): section for section in ("axes", "places", "joints", "mates", "chains", "rails", "warmings")}
_SECTIONS |= {"frame": "frames", "panel": "sheets", "sheet": "sheets", "step": "steps"}


def _follows(scene: Scene, kind: str, name: str) -> bool:
    """True for a pair that follows from an axis, ``y.motor-pulley``: it is described with the axis."""
    axis, dot, _ = name.partition(".")
    return kind == "mate" and bool(dot) and scene.knows("axes", axis)


def accepted(scene: Scene) -> None:
    """Note accepted findings that cannot be meant."""
    for number, one in enumerate(scene.design.accepted):
        path = ("design", "accepted", number)
        if not _CODE.fullmatch(one.code):
            scene.add("24", f"{one.code!r} is no code of a finding", "copy it from the finding: BELT-03", *path, "code")
        kind, _, name = one.subject.partition(" ")
        if kind in _SECTIONS and not _follows(scene, kind, name.strip()):
            scene.expect(_SECTIONS[kind], name.strip(), "an accepted finding", *path, "subject")
        if not one.because.strip():
            scene.add("21", "an accepted finding has no reason", "say in because why it may stay", *path, "because")
