"""Open a design in a workshop, with the choice that is in force there."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from pathlib import Path

from scantling.build.case import Case
from scantling.build.reference import reference_build
from scantling.errors import Fault, FaultsError, Where, nearest
from scantling.model.build import Build, Key
from scantling.reading.lock import Lock, read_lock
from scantling.reading.project import read_project


@dataclass(frozen=True)
class Session:
    """An opened design.

    lock : the choice in force, where ``plan.lock`` was found and still fits the design
    """

    case: Case
    copies: int
    lock: Lock | None = None
    folder: Path = field(default_factory=Path)

    @property
    def has_offers(self) -> bool:
        """True where there is anything to buy from."""
        return bool(self.case.project.workshop.offers)


def open_design(
    folder: Path, workshop: str | None = None, copies: int | None = None, lock: Path | None = None
) -> Session:
    """Read a design folder and a workshop; raises ``FaultsError`` with every fault of both."""
    project = read_project(folder, workshop, copies)
    case = Case(project)
    return Session(case, project.workshop.copies, read_lock(lock) if lock and lock.is_file() else None, folder)


def start_build(session: Session) -> Build:
    """Return the choice in force where there is one, else the reference parts."""
    build = reference_build(session.case, session.copies)
    if session.lock is None:
        return build
    questions = set(session.case.questions)
    kept = {key: answer for key, answer in session.lock.answers.items() if key in questions}
    valid = {key: a for key, a in kept.items() if a in session.case.answers(key, kept)}
    return build.replacing(valid)


def read_changes(session: Session, texts: Iterable[str]) -> dict[Key, str]:
    """Return ``place=part``, ``get:place=printed PETG`` and ``screw:joint=M3x16 socket head screw`` as answers.

    Raises ``FaultsError`` with one fault for each text that names nothing.
    """
    found: dict[Key, str] = {}
    faults: list[Fault] = []
    for text in texts:
        key, answer, fault = _change(session, text, found)
        if fault is not None or key is None:
            faults.append(fault or Fault("ASK-01", f"{text!r} is no change", "write place=part", Where(text)))
        else:
            found[key] = answer
    if faults:
        raise FaultsError(faults)
    return found


def _change(session: Session, text: str, known: Mapping[Key, str]) -> tuple[Key | None, str, Fault | None]:
    subject, equals, answer = text.partition("=")
    where = Where(text)
    if not equals:
        return None, "", Fault("ASK-01", f"{text!r} is no change", "write place=part, y-pulley=pulley-16 say", where)
    key = read_key(session, subject.strip())
    if key is None:
        known_names = [*session.case.project.design.places, *session.case.project.design.joints]
        return (
            None,
            "",
            Fault("ASK-02", f"no place or joint {subject.strip()!r}", nearest(subject.strip(), known_names), where),
        )
    answer = "" if answer.strip() in ("", "empty") else answer.strip()
    allowed = session.case.answers(key, known)
    if answer not in allowed:
        mend = nearest(answer, [a or "empty" for a in allowed])
        return None, "", Fault("ASK-03", f"{answer or 'empty'!r} is no answer to the question which {key}", mend, where)
    return key, answer, None


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
