"""Remember a choice by all that it was made from, so that the same question is not solved twice.

The memory is a byte store that a face opens and hands down. What comes out of it is read as a foreign file would be:
anything that is not a choice with the cost that its orders add up to is solved anew.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from importlib.metadata import version
from typing import Protocol

from pydantic import TypeAdapter, ValidationError

from scantling import __version__
from scantling.api.opening import Session
from scantling.choosing.result import Choice, Infeasible
from scantling.choosing.ties import Present
from scantling.model.build import Key
from scantling.plans.digests import digest


class Store(Protocol):
    """A place for bytes by name."""

    def get(self, name: str) -> bytes | None:
        """Return what is stored under a name, or None."""

    def put(self, name: str, data: bytes) -> None:
        """Store bytes under a name."""


def remembered_choice(
    store: Store | None,
    session: Session,
    pins: Mapping[Key, str],
    present: Present | None,
    solve: Callable[[], Choice | Infeasible],
) -> Choice | Infeasible:
    """Return the stored choice for exactly this question, else solve it and store the answer."""
    if store is None:
        return solve()
    name = f"choice-{question_digest(session, pins, present)}.json"
    found = _read(store.get(name))
    if found is None:
        found = solve()
        store.put(name, TypeAdapter(Choice | Infeasible).dump_json(found))
    return found


def question_digest(session: Session, pins: Mapping[Key, str], present: Present | None) -> str:
    """Return the digest of all that a choice depends on: programs, files by content, copies, pins, choice in force."""
    project = session.case.project
    answers, packs = (sorted(present.answers.items()), sorted(present.packs.items())) if present else ([], [])
    files = sorted(project.digests.items())
    return digest([__version__, version("highspy"), files, session.copies, sorted(pins.items()), answers, packs])


def _read(data: bytes | None) -> Choice | Infeasible | None:
    if data is None:
        return None
    try:
        found: Choice | Infeasible = TypeAdapter(Choice | Infeasible).validate_json(data)
    except (ValidationError, ValueError):
        return None
    is_whole = isinstance(found, Infeasible) or found.purchase.cost_minor == found.cost_minor
    return found if is_whole else None
