"""Open a design in a workshop, with the choice that is in force there."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from pathlib import Path

from scantling.build.case import Case
from scantling.build.keeping import Store
from scantling.build.reference import reference_build
from scantling.errors import Fault, FaultsError, Where, nearest
from scantling.model.build import Build
from scantling.model.build import Key as Key  # faces name its type
from scantling.reading.lock import Lock, read_lock
from scantling.reading.project import read_project


@dataclass(frozen=True)
class Session:
    """An opened design.

    lock : the choice in force, where a ``plan.lock`` was found; and its file
    """

    case: Case
    copies: int
    lock: Lock | None = None
    lock_file: Path | None = None

    @property
    def has_offers(self) -> bool:
        """True where there is anything to buy from."""
        return bool(self.case.project.workshop.offers)


def open_design(
    folder: Path,
    workshop: str | None = None,
    copies: int | None = None,
    lock: Path | None = None,
    store: Store | None = None,
) -> Session:
    """Read a design folder and a workshop; raises ``FaultsError`` with every fault of both.

    What takes long to work out is kept in ``store``.
    """
    project = read_project(folder, workshop, copies)
    case = Case(project, store)
    if project.design.accepted:
        _refuse_overrides(case)
    return Session(case, project.workshop.copies, read_lock(lock) if lock else None, lock)


def _refuse_overrides(case: Case) -> None:
    """Raise what is wrong with the findings that a design accepts; the checks are loaded only where it does."""
    from scantling.checks.overrides import override_faults

    faults = override_faults(case)
    if faults:
        raise FaultsError(faults)


def place_options(folder: Path) -> dict[str, tuple[str, ...]]:
    """Return the parts that may fill each place of a design; raises ``FaultsError``."""
    design = read_project(folder).design
    return {name: tuple(option.part for option in place.options) for name, place in design.places.items()}


def start_build(session: Session) -> Build:
    """Return the choice in force where there is one, else the reference parts."""
    build = reference_build(session.case, session.copies)
    return build.replacing(_kept(session, build))


def basis(session: Session) -> str:
    """Return in words what a check or a comparison starts from."""
    if session.lock is None:
        return "with the reference parts"
    gone = outdated_answers(session)
    lost = f"; no longer there, so as in the reference: {', '.join(gone)}" if gone else ""
    return f"with the parts chosen in {session.lock_file}{lost}"


def outdated_answers(session: Session) -> tuple[str, ...]:
    """Return the questions whose answer in ``plan.lock`` is no longer one: there the reference part is taken."""
    if session.lock is None:
        return ()
    kept = _kept(session, reference_build(session.case, session.copies))
    return tuple(str(key) for key in session.lock.answers if key not in kept)


def _kept(session: Session, reference: Build) -> dict[Key, str]:
    """Return the answers of ``plan.lock`` that still are answers to a question of the design; parts before the rest."""
    case, locked = session.case, session.lock.answers if session.lock else {}
    questions = set(case.questions)
    asked = {key: answer for key, answer in locked.items() if key in questions}
    parts = {key: a for key, a in asked.items() if key.kind == "part" and a in case.answers(key, {})}
    known = {**reference.as_dict(), **parts}
    others = {key: a for key, a in asked.items() if key.kind != "part" and a in case.answers(key, known)}
    return {**parts, **others}


def read_changes(session: Session, texts: Iterable[str]) -> dict[Key, str]:
    """Return ``place=part``, ``get:place=printed PETG`` and ``screw:joint=M3x16 socket head screw`` as answers.

    Raises ``FaultsError`` with one fault for each text that names nothing.
    """
    found: dict[Key, str] = {}
    faults: list[Fault] = []
    for text in texts:
        change = _change(session, text, found)
        if isinstance(change, Fault):
            faults.append(change)
        else:
            found[change[0]] = change[1]
    if faults:
        raise FaultsError(faults)
    return found


def _change(session: Session, text: str, known: Mapping[Key, str]) -> tuple[Key, str] | Fault:
    subject, equals, answer = (word.strip() for word in text.partition("="))
    where = Where(text)
    if not equals:
        return Fault("ASK-01", f"{text!r} is no change", "write place=part, y-pulley=pulley-16 say", where)
    key = read_key(session, subject)
    if key is None:
        return unknown_question(session, subject, where)
    answer = "" if answer == "empty" else answer
    allowed = session.case.answers(key, known)
    if answer in allowed:
        return key, answer
    what = f"{answer or 'empty'!r} is no answer to: {key}?"
    return Fault("ASK-03", what, nearest(answer, [a or "empty" for a in allowed]), where)


def unknown_question(session: Session, subject: str, where: Where) -> Fault:
    """Return the fault of naming no question, with the nearest names that are one."""
    design = session.case.project.design
    kind, colon, name = subject.partition(":")
    if not colon:
        return Fault("ASK-02", f"no place called {subject!r}", nearest(subject, design.places), where)
    if kind == "screw":
        return Fault("ASK-02", f"no joint called {name!r}", nearest(name, design.joints), where)
    if kind == "get":
        return Fault("ASK-02", f"no place called {name!r}", nearest(name, design.places), where)
    mend = "write place=part, get:place=bought or screw:joint=M3x12 socket head screw"
    return Fault("ASK-02", f"no question is called {subject!r}", mend, where)


def read_key(session: Session, subject: str) -> Key | None:
    """Return the question that ``place``, ``get:place`` or ``screw:joint`` names, or None."""
    first, colon, rest = subject.partition(":")
    kind, name = (first, rest) if colon else ("part", first)
    design = session.case.project.design
    if kind == "part" and name in design.places:
        return session.case.part_key(name)
    if kind == "get" and name in design.places:
        return Key("get", name)
    if kind == "screw" and name in design.joints:
        return Key("screw", name)
    return None
