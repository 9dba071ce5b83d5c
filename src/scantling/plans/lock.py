"""``plan.lock``: the choice in force and what it was made from; itself input to the next plan.

It keeps a choice where it is (among equally cheap ones the nearest to it is taken) and tells a later reader from
which files, by content, a plan was made.
"""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from scantling import __version__
from scantling.model.build import Key
from scantling.plans.digests import to_json
from scantling.plans.plan import Plan


def lock_bytes(plan: Plan, pins: Mapping[Key, str]) -> bytes:
    """Return the lock of a plan as JSON text."""
    project = plan.case.project
    content: dict[str, Any] = {
        "format": "1",
        "made by": f"scantling {__version__}",
        "design": f"{project.design.machine.name} revision {project.design.machine.revision}",
        "workshop": project.workshop.name,
        "copies": plan.build.copies,
        "files": dict(sorted(project.digests.items())),
        "pinned": {str(key): answer for key, answer in sorted(pins.items())},
        "proven": bool(plan.choice and plan.choice.proven),
        "answers": {f"{key.kind} {key.subject}": answer for key, answer in plan.build.answers},
        "packs": {row.offer: row.packs for sheet in plan.orders for row in sheet.rows},
    }
    return (to_json(content, indent=1) + "\n").encode()
