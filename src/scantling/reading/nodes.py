"""A file as it was written, before anyone asks what it means: texts, lists and groups of keys, each with its place."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Any

from scantling.errors import Where

Path = tuple[str | int, ...]


@dataclass(slots=True)
class Text:
    """A scalar as written; ``shift`` is how many characters stand before its first (1 for a quotation mark)."""

    value: str
    where: Where
    shift: int = 0


@dataclass(slots=True)
class Items:
    """A list."""

    items: list[Node]
    where: Where


@dataclass(slots=True)
class Entries:
    """A group of keys; ``keys`` says where each key stands."""

    entries: dict[str, Node]
    keys: dict[str, Where]
    where: Where


@dataclass(slots=True)
class Broken:
    """Something that was refused already; whatever holds it is left out without a further word."""

    where: Where


Node = Text | Items | Entries | Broken

NAMES = {Text: "a text", Items: "a list", Entries: "a group of keys", Broken: "something unreadable"}


def is_whole(node: Node) -> bool:
    """True where nothing inside was refused."""
    if isinstance(node, Entries):
        return all(is_whole(child) for child in node.entries.values())
    if isinstance(node, Items):
        return all(is_whole(child) for child in node.items)
    return isinstance(node, Text)


def plain(node: Node) -> Any:
    """Return texts, lists and dictionaries without their places."""
    if isinstance(node, Text):
        return node.value
    if isinstance(node, Entries):
        return {key: plain(child) for key, child in node.entries.items()}
    return [plain(child) for child in node.items] if isinstance(node, Items) else None


def child_of(node: Node, step: str | int) -> Node | None:
    """Return one child, None where there is none."""
    if isinstance(node, Entries) and isinstance(step, str):
        return node.entries.get(step)
    if isinstance(node, Items) and isinstance(step, int) and 0 <= step < len(node.items):
        return node.items[step]
    return None


def places(node: Node, path: Path) -> Iterator[tuple[Path, Where]]:
    """Yield the place of everything inside: of a text where it stands, of a group the place of its key."""
    if isinstance(node, Entries):
        for key, child in node.entries.items():
            inner = (*path, key)
            yield inner, child.where if isinstance(child, Text) else node.keys[key]
            if not isinstance(child, Text):
                yield from places(child, inner)
    elif isinstance(node, Items):
        for number, child in enumerate(node.items):
            inner = (*path, number)
            yield inner, child.where
            if not isinstance(child, Text):
                yield from places(child, inner)
