"""Choose, and remember by all that it was made from, so that the same question is not worked out twice.

The memory is a byte store that a face opens and hands down. What comes out of it is read as a foreign file would be:
anything that is not whole, or not a choice with the cost that its orders add up to, is worked out anew.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from importlib.metadata import version
from typing import Any

from pydantic import TypeAdapter, ValidationError

from scantling import __version__
from scantling.api.opening import Session
from scantling.api.telling import Tell
from scantling.build.keeping import Store as Store  # faces name its type
from scantling.build.keeping import sealed, unsealed
from scantling.checks.all import CHECKS
from scantling.choosing.choose import Opened, choose, open_choice, present_of
from scantling.choosing.growing import OverAll
from scantling.choosing.result import Choice, Infeasible
from scantling.choosing.ties import Present
from scantling.choosing.tree_text import grown_text, read_grown
from scantling.choosing.trees import Tree
from scantling.model.build import Key
from scantling.plans.digests import digest
from scantling.plans.remembering import Remember

FOUND: TypeAdapter[Choice | Infeasible] = TypeAdapter(Choice | Infeasible)


class Chooser:
    """Chooses for one session; tables and choices worked out once are taken from then on.

    With a store also those of an earlier run, for the very same programs, files and copies.
    """

    def __init__(self, session: Session, store: Store | None = None) -> None:
        """Choose for ``session``."""
        self._session, self._store = session, store
        self._opened: Opened | None = None

    def opened(self, tell: Tell | None = None) -> Opened:
        """Return the session opened for choosing, all tables grown: some seconds where they are not remembered."""
        if self._opened is None:
            name = f"tables-{self._digest()}"
            before = _grown(self._get(name))
            grower = OverAll(self._session.case, before)
            self._opened = open_choice(self._session.case, CHECKS, self._session.copies, progress=tell, grower=grower)
            if grower.grown.keys() != before.keys():
                self._put(name, grown_text(grower.grown).encode())
        return self._opened

    def choice(self, pins: Mapping[Key, str], present: Present | None, tell: Tell | None = None) -> Choice | Infeasible:
        """Return the cheapest sound build with ``pins``; of equally cheap ones that nearest to ``present``."""
        name = self._name(pins, present)
        found = _found(self._get(name))
        if found is None:
            found = choose(self.opened(tell), pins=pins, present=present, progress=tell)
            self._put(name, FOUND.dump_json(found))
            if isinstance(found, Choice) and found.proven:  # it is itself the nearest to itself: the next plan's answer
                self._put(self._name(pins, present_of(found)), FOUND.dump_json(found))
        return found

    def known(self, pins: Mapping[Key, str], present: Present | None) -> Choice | None:
        """Return what ``choice`` would, where that is remembered and there is one."""
        found = _found(self._get(self._name(pins, present)))
        return found if isinstance(found, Choice) else None

    def _name(self, pins: Mapping[Key, str], present: Present | None) -> str:
        near = (sorted(present.answers.items()), sorted(present.packs.items())) if present else None
        return f"choice-{self._digest(sorted(pins.items()), near)}"

    def _digest(self, *asked: Any) -> str:
        """Return the digest of all that an answer depends on: programs, files by content, copies, what is asked."""
        files = sorted(self._session.case.project.digests.items())
        return digest([__version__, version("highspy"), files, self._session.copies, asked])

    def _get(self, name: str) -> bytes | None:
        return unsealed(self._store, name)

    def _put(self, name: str, data: bytes) -> None:
        sealed(self._store, name, data)


def remembering(store: Store | None) -> Remember:
    """Return what gives the bytes made earlier under a name, else makes and stores them.

    The programs that draw are part of the name.
    """
    programs = digest([__version__, version("typst"), version("font-source-sans-pro")])

    def remember(name: str, make: Callable[[], bytes]) -> bytes:
        whole = f"{name}-{programs}"
        found = unsealed(store, whole)
        if found is None:
            found = make()
            sealed(store, whole, found)
        return found

    return remember


def _grown(data: bytes | None) -> dict[str, Tree | None]:
    try:
        return read_grown(data.decode()) if data is not None else {}
    except ValueError:
        return {}


def _found(data: bytes | None) -> Choice | Infeasible | None:
    try:
        found = FOUND.validate_json(data) if data is not None else None
    except (ValidationError, ValueError):
        return None
    is_whole = not isinstance(found, Choice) or found.purchase.cost_minor == found.cost_minor
    return found if is_whole else None
