"""A design from texts that stand in no file: the options of a command, a starting form."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from scantling.errors import Where
from scantling.model.design import Design
from scantling.reading.collecting import Faults
from scantling.reading.nodes import Entries, Items, Node, Text
from scantling.reading.validate import validated


def design_from_texts(sections: Mapping[str, Any], where: str) -> Design:
    """Return the design that nested texts describe; raises ``FaultsError`` with every fault.

    where : what a fault names as its place (``try belt``)
    """
    faults = Faults()
    design: Design | None = validated(node_of(sections, Where(where)), Design, where, faults)
    faults.raise_any()
    if design is None:
        raise ValueError(f"{where}: neither a design nor a fault")
    return with_identifiers(design)


def node_of(given: Any, where: Where) -> Node:
    """Return nested dictionaries, lists and texts as a tree whose every place is ``where``."""
    if isinstance(given, Mapping):
        entries = {str(key): node_of(value, where) for key, value in given.items()}
        return Entries(entries, dict.fromkeys(entries, where), where)
    if isinstance(given, (list, tuple)):
        return Items([node_of(item, where) for item in given], where)
    return Text(str(given), where)


def with_identifiers(design: Design) -> Design:
    """Return the design with every keyed thing told its key."""
    changed = {}
    for section in (
        "parts",
        "places",
        "mates",
        "axes",
        "chains",
        "joints",
        "sheets",
        "rails",
        "warmings",
        "frames",
        "steps",
    ):
        things = getattr(design, section)
        changed[section] = {key: thing.model_copy(update={"id": key}) for key, thing in things.items()}
    return design.model_copy(update=changed)
