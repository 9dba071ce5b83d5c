"""``plan.lock``: the choice in force, read back."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any, cast

from scantling.errors import FaultsError, Where
from scantling.model.build import Key
from scantling.reading.collecting import Faults
from scantling.reading.files import MOST_TEXT_BYTES, Folder, decoded

KINDS = ("part", "get", "screw")


@dataclass(frozen=True)
class Lock:
    """What a lock says.

    answers : the choice    pinned : those that were asked for    packs : by offer    files : digests of what was read
    """

    copies: int
    answers: Mapping[Key, str]
    pinned: Mapping[Key, str] = field(default_factory=dict)
    packs: Mapping[str, int] = field(default_factory=dict)
    files: Mapping[str, str] = field(default_factory=dict)
    proven: bool = False


def read_lock(path: Path) -> Lock:
    """Return the lock in a file; raises ``FaultsError`` for a file that no plan wrote."""
    faults = Faults()
    data = Folder(path.parent, faults, {}).read(path, MOST_TEXT_BYTES, Where(path.name))
    text = None if data is None else decoded(data, path.name, faults)
    content = None if text is None else _json(text, path.name, faults)
    found = None if content is None else _lock(content, path.name, faults)
    if found is None:
        raise FaultsError(faults.found)
    return found


_MEND = "delete it; the next plan writes a new one"


def _json(text: str, file: str, faults: Faults) -> dict[str, Any] | None:
    try:
        content = json.loads(text)
    except (json.JSONDecodeError, RecursionError) as error:
        line, column = getattr(error, "lineno", 1), getattr(error, "colno", 1)
        faults.add("70", "the lock is not JSON", _MEND, Where(file, line, column))
        return None
    if not isinstance(content, dict) or content.get("format") != "1":
        faults.add("70", "the lock has another format than this program writes", _MEND, Where(file, 1, 1))
        return None
    return content


def _lock(content: dict[str, Any], file: str, faults: Faults) -> Lock | None:
    try:
        return Lock(
            copies=_whole(content["copies"]),
            answers=_answers(content["answers"]),
            pinned=_answers(content.get("pinned", {})),
            packs={str(offer): _whole(packs) for offer, packs in dict(content.get("packs", {})).items()},
            files={str(name): str(digest) for name, digest in dict(content.get("files", {})).items()},
            proven=content.get("proven") is True,
        )
    except (KeyError, TypeError, ValueError) as error:
        faults.add("70", f"the lock is not as a plan writes it ({error})", _MEND, Where(file, 1, 1))
        return None


def _whole(value: Any) -> int:
    if type(value) is not int or value < 0:
        raise ValueError(f"{value!r} is no count")
    return value


def _answers(rows: Any) -> dict[Key, str]:
    """``part of x-rod`` and ``part x-rod`` name the same question."""
    found: dict[Key, str] = {}
    for text, answer in dict(rows).items():
        kind, _, subject = str(text).partition(" ")
        if kind not in KINDS or not isinstance(answer, str):
            raise ValueError(f"{text!r} is no question")
        found[Key(cast(Any, kind), subject.removeprefix("of "))] = answer
    return found
