"""A design that stands in no file: nested texts, as a file would hold them."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path
from typing import Any

from scantling.errors import Where
from scantling.model.design import Design
from scantling.reading.collecting import Faults
from scantling.reading.document import document_of
from scantling.reading.files import Folder
from scantling.reading.nodes import Entries, Items, Node, Text
from scantling.reading.rules import RULES
from scantling.reading.scene import Scene
from scantling.reading.sections import Sections


def design_from_texts(sections: Mapping[str, Any], name: str) -> Design:
    """Return the design that texts, lists and mappings describe; raises ``FaultsError`` as for a file.

    name : what faults call it in place of a file
    """
    faults = Faults()
    tree = node_of(sections, Where(name))
    if not isinstance(tree, Entries):
        raise TypeError("a design is made of sections")
    document = document_of(tree, Design, Sections(Folder(Path(), faults, {}), Path(), faults), faults)
    scene = Scene(document, None, faults)
    for rule in RULES:
        rule(scene)
    faults.raise_any()
    return document.value


def node_of(data: Any, where: Where) -> Node:
    """Return a tree whose every value stands at one place."""
    if isinstance(data, Mapping):
        entries = {str(key): node_of(value, where) for key, value in data.items()}
        return Entries(entries, dict.fromkeys(entries, where), where)
    if isinstance(data, list | tuple):
        return Items([node_of(value, where) for value in data], where)
    return Text(str(data), where)
