"""A check as it is shown, remembered until one of the files that it was read from is another.

A check of files that have not changed needs none of the machinery: what is imported here at the top is little, and the
rest only when there is something to work out.
"""

from __future__ import annotations

import dataclasses
import json
from collections.abc import Mapping
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path
from typing import Any

from scantling import __version__
from scantling.api.serving import Serving as Serving
from scantling.build.keeping import Store, sealed, unsealed
from scantling.build.setting import Setting as Setting  # faces name its type
from scantling.findings import Finding, Limit, NotLookedAt, Verdict, worst
from scantling.reading.files import are_unchanged, seen_now


@dataclass(frozen=True)
class Checked:
    """All that a check has to say; ``data`` is the same as JSON text, with what the parts make of the design."""

    title: str
    findings: tuple[Finding, ...]
    not_looked_at: tuple[NotLookedAt, ...]
    unlocking: tuple[str, ...]
    settings: tuple[Setting, ...]
    serving: tuple[Serving, ...]
    data: str

    @property
    def verdict(self) -> Verdict:
        """The worst of all findings."""
        return worst([finding.verdict for finding in self.findings])

    @property
    def is_sound(self) -> bool:
        """True where everything that was looked at is sound or marginal."""
        return self.verdict in (Verdict.SOUND, Verdict.MARGINAL)


@dataclass(frozen=True)
class CheckAsked:
    """What a check is asked: as for ``open_design``, changes as texts, and whether to try every stand-in."""

    folder: Path
    workshop: str | None = None
    copies: int | None = None
    lock: Path | None = None
    changes: tuple[str, ...] = ()
    stand_ins: bool = False

    @property
    def name(self) -> str:
        """The name under which the answer is remembered; files are looked at again besides."""
        lock = None if self.lock is None else str(self.lock.resolve())
        shop = None if self.workshop is None else [self.workshop, str(Path(self.workshop).resolve())]
        asked = [__version__, str(self.folder.resolve()), shop, self.copies, lock, self.changes, self.stand_ins]
        return f"check-{sha256(json.dumps(asked).encode()).hexdigest()}"


def checked(asked: CheckAsked, store: Store | None = None) -> Checked:
    """Return what a check says, from an earlier run where no file has changed since; raises ``FaultsError``."""
    found = _remembered(store, asked.name)
    if found is None:
        found, seen = _worked_out(asked, store)
        content = {"seen": dict(seen), "checked": dataclasses.asdict(found)}
        sealed(store, asked.name, json.dumps(content, ensure_ascii=False).encode())
    return found


def _remembered(store: Store | None, name: str) -> Checked | None:
    data = unsealed(store, name)
    try:
        content = json.loads(data) if data is not None else None
        return _from_data(content["checked"]) if content is not None and are_unchanged(content["seen"]) else None
    except (ValueError, KeyError, TypeError):
        return None


def _worked_out(asked: CheckAsked, store: Store | None) -> tuple[Checked, Mapping[str, str]]:
    from scantling.api.checking import check_design, stand_ins, title_of
    from scantling.api.data import check_data, json_text
    from scantling.api.opening import open_design, read_changes

    session = open_design(asked.folder, asked.workshop, asked.copies, asked.lock, store)
    plan = check_design(session, read_changes(session, asked.changes))
    serving = stand_ins(session, plan) if asked.stand_ins else ()
    found = Checked(
        title_of(session, plan),
        plan.findings,
        plan.not_looked_at,
        plan.unlocking,
        plan.settings,
        serving,
        json_text(check_data(plan, serving)),
    )
    seen = dict(session.case.project.seen)
    if asked.lock is not None:
        seen |= seen_now(asked.lock)
    return found, seen


def _from_data(data: Mapping[str, Any]) -> Checked:
    return Checked(
        title=data["title"],
        findings=tuple(Finding(**_with(one, verdict=Verdict, side=Limit)) for one in data["findings"]),
        not_looked_at=tuple(NotLookedAt(**_with(one)) for one in data["not_looked_at"]),
        unlocking=tuple(data["unlocking"]),
        settings=tuple(Setting(**one) for one in data["settings"]),
        serving=tuple(Serving(**_with(one, verdict=Verdict)) for one in data["serving"]),
        data=data["data"],
    )


def _with(data: Mapping[str, Any], **kinds: Any) -> dict[str, Any]:
    """Fields as they were: lists of texts are tuples, words of a list are that."""
    found = {key: tuple(value) if isinstance(value, list) else value for key, value in data.items()}
    return found | {key: kind(found[key]) for key, kind in kinds.items()}
