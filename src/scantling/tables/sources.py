"""Where the numbers of the tables come from, and how far each was confirmed."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cache

from scantling.tables.csv_table import pick


@dataclass(frozen=True)
class Source:
    """One origin of numbers.

    key : what the tables' ``source`` column says    title, edition : as printed
    confirmed : how we know; begins with "from memory" where nobody has looked it up
    """

    key: str
    title: str
    edition: str
    confirmed: str

    @property
    def from_memory(self) -> bool:
        """True where the numbers were not checked against any text or program."""
        return self.confirmed.startswith("from memory")


@cache
def all_sources() -> dict[str, Source]:
    """Return every source by its key."""
    import tomllib
    from importlib.resources import files

    text = (files("scantling.tables") / "SOURCES.toml").read_text(encoding="utf-8")
    entries = tomllib.loads(text)["sources"]
    return {key: Source(key, e["title"], str(e["edition"]), e["confirmed"]) for key, e in entries.items()}


def source(key: str) -> Source:
    """Return the source with this key; ``LookUpError`` where there is none."""
    return pick("source", key, all_sources())


def cite(key: str) -> str:
    """Return how a finding names this source: its title, and that it is from memory where it is.

    >>> cite("iso-273")
    'ISO 273 clearance holes'
    """
    found = source(key)
    return f"{found.title} (from memory)" if found.from_memory else found.title
