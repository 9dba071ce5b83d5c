"""``plan.lock``: the choice in force, read back."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any, cast

from scantling.errors import Where
from scantling.model.build import Key
from scantling.reading.collecting import Faults
from scantling.reading.files import MOST_TEXT_BYTES, Folder, decoded

_MEND = "delete it: the next plan makes a new one"


@dataclass(frozen=True)
class Lock:
    """The choice in force.

    answers : by question    packs : bought packs by offer    files : digests of what it was made from    copies : machines
    """

    answers: Mapping[Key, str]
    packs: Mapping[str, int]
    files: Mapping[str, str]
    copies: int


def read_lock(path: Path) -> Lock:
    """Return the choice in force; raises ``FaultsError`` where the file is not a lock."""
    faults = Faults()
    data = Folder(path.parent, faults, {}).read(path, MOST_TEXT_BYTES)
    text = decoded(data, path.name, faults) if data is not None else None
    lock = _parsed(text, path, faults) if text is not None else None
    faults.raise_any()
    if lock is None:
        raise ValueError(f"{path}: neither a lock nor a fault")
    return lock


def _parsed(text: str, path: Path, faults: Faults) -> Lock | None:
    try:
        content = json.loads(text)
    except (json.JSONDecodeError, RecursionError) as error:
        line, column = (error.lineno, error.colno) if isinstance(error, json.JSONDecodeError) else (1, 1)
        faults.add("70", f"{path.name} is not JSON", _MEND, Where(path.name, line, column))
        return None
    try:
        return _lock(content)
    except (KeyError, TypeError, ValueError, AttributeError) as error:
        faults.add("70", f"{path.name} is not a lock of ours ({error})", _MEND, Where(path.name, 1, 1))
        return None


def _lock(content: dict[str, Any]) -> Lock:
    answers = {_key(name): _text(answer) for name, answer in content["answers"].items()}
    packs = {str(offer): int(count) for offer, count in content["packs"].items()}
    files = {str(name): _text(digest) for name, digest in content["files"].items()}
    return Lock(answers, packs, files, int(content["copies"]))


def _key(name: str) -> Key:
    kind, _, subject = name.partition(" ")
    if kind not in ("part", "get", "screw") or not subject:
        raise ValueError(f"no question {name!r}")
    return Key(cast(Any, kind), subject)


def _text(value: Any) -> str:
    if not isinstance(value, str):
        raise TypeError(f"{value!r} is not a text")
    return value
