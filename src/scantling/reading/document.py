"""One file of a design or a workshop with all that its sections name: as far as it can be used, as model data."""

from __future__ import annotations

from dataclasses import dataclass, field
from pathlib import Path as FilePath
from typing import Any, Generic, TypeVar

from pydantic import BaseModel

from scantling.errors import NOWHERE, Where, nearest
from scantling.model.sheet import Hole
from scantling.reading.collecting import Faults
from scantling.reading.fields import field_types, item_type, models, name_in_files, value_type
from scantling.reading.files import MOST_TEXT_BYTES, Folder, decoded
from scantling.reading.nodes import NAMES, Broken, Entries, Items, Node, Text
from scantling.reading.sections import Sections
from scantling.reading.validate import validated
from scantling.reading.yaml_nodes import read_yaml

M = TypeVar("M", bound=BaseModel)
_NOUNS = {"accepted": "accepted finding", "stock": "stock", "spares": "spares rule", "axes": "axis", "mates": "mate"}
_NOUNS |= {"loom": "wire", "electronics": "electronics"}


@dataclass
class Document(Generic[M]):
    """What was read of a file.

    value : the model, without whatever was refused    tree : the same as texts with their places
    broken : by section, identifiers of refused entries    lost : sections of which something could not be read
    """

    value: M
    tree: Entries
    broken: dict[str, set[str]] = field(default_factory=dict)
    lost: set[str] = field(default_factory=set)


def read_document(
    path: FilePath, model: type[M], folder: Folder, faults: Faults, where: Where = NOWHERE
) -> Document[M]:
    """Return what stands in a file; faults are noted and what they touch is left out."""
    tree = _tree(path, folder, faults, where)
    if tree is None:
        return Document(model.model_construct(), Entries({}, {}, where), {}, set(field_types(model)))
    return document_of(tree, model, Sections(folder, path.parent, faults), faults)


def document_of(tree: Entries, model: type[M], sections: Sections, faults: Faults) -> Document[M]:
    """Return what a tree describes; files that it names are looked up by ``sections``."""
    return _Filling(model, tree, sections, faults).document()


def _tree(path: FilePath, folder: Folder, faults: Faults, where: Where) -> Entries | None:
    data = folder.read(path, MOST_TEXT_BYTES, where)
    file = folder.name_of(path)
    text = None if data is None else decoded(data, file, faults)
    tree = None if text is None else read_yaml(text, file, faults)
    if tree is None or isinstance(tree, Broken):
        return None
    if not isinstance(tree, Entries):
        faults.add("22", f"{NAMES[type(tree)]} where keys are wanted", "write key: value on each line", tree.where)
        return None
    return tree


class _Filling(Generic[M]):
    """Reads the fields of one file, each for itself, so that one fault does not hide another."""

    def __init__(self, model: type[M], tree: Entries, sections: Sections, faults: Faults) -> None:
        self.model = model
        self.tree = tree
        self.sections = sections
        self.faults = faults
        self.whole = Entries({}, {}, tree.where)
        self.broken: dict[str, set[str]] = {}

    def document(self) -> Document[M]:
        """Return all that can be used."""
        types = field_types(self.model)
        for key, where in self.tree.keys.items():
            if key not in types:
                self.faults.add("20", f"{key!r} is not a section here", nearest(key, types), where)
        values: dict[str, Any] = {}
        for name, info in self.model.model_fields.items():
            key = name_in_files(name, info)
            node = self.tree.entries.get(key)
            if node is not None:
                value = self._field(key, node, types[key])
                if value is not None:
                    values[name] = value
            elif info.is_required():
                self.faults.add("21", f"{key!r} is missing", f"add {key}: …", self.tree.where)
        lost = self.sections.lost | {key for key, node in self.whole.entries.items() if isinstance(node, Broken)}
        return Document(self.model.model_construct(**values), self.whole, self.broken, lost)

    def _field(self, key: str, node: Node, annotation: Any) -> Any:
        self.whole.keys[key] = self.tree.keys[key]
        if isinstance(node, Broken):
            self.whole.entries[key] = node
            return None
        if value_type(annotation) is not None:
            return self._keyed(key, node, value_type(annotation))
        if models(item_type(annotation)):
            return self._listed(key, node, item_type(annotation))
        self.whole.entries[key] = node
        return validated(node, annotation, key, self.faults)

    def _keyed(self, key: str, node: Node, annotation: Any) -> dict[str, Any]:
        found = self.sections.keyed(node, key, annotation)
        self.whole.entries[key] = found
        values: dict[str, Any] = {}
        has_id = any("id" in model.model_fields for model in models(annotation))
        for name, child in found.entries.items():
            if has_id and isinstance(child, Entries) and "id" in child.entries:
                mend = f"delete it; {name!r} is the identifier"
                self.faults.add("20", f"{noun(key)} {name}: 'id' is not a key here", mend, child.keys["id"])
                child.entries.pop("id")
                child.keys.pop("id")
            self._open_holes(child)
            value = validated(child, annotation, f"{noun(key)} {name}", self.faults, name if has_id else None)
            if value is None:
                self.broken.setdefault(key, set()).add(name)
            else:
                values[name] = value
        return values

    def _listed(self, key: str, node: Node, annotation: Any) -> tuple[Any, ...]:
        """Return the items that can be used; the tree keeps only those too, so that places stay the same."""
        found = self.sections.listed(node, key, annotation)
        kept = Items([], found.where)
        values: list[Any] = []
        for number, child in enumerate(found.items, 1):
            value = validated(child, annotation, f"{noun(key)} {number}", self.faults)
            if value is None:
                self.broken.setdefault(key, set()).add(str(number))
            else:
                kept.items.append(child)
                values.append(value)
        self.whole.entries[key] = kept
        return tuple(values)

    def _open_holes(self, child: Node) -> None:
        """Read the holes of a sheet from the table that it names: ``holes: holes.csv``."""
        holes = child.entries.get("holes") if isinstance(child, Entries) else None
        if isinstance(child, Entries) and (
            isinstance(holes, Text) or (isinstance(holes, Items) and _names_file(holes))
        ):
            child.entries["holes"] = self.sections.listed(holes, "holes", Hole)


def _names_file(items: Items) -> bool:
    return any(isinstance(item, Text) for item in items.items)


def noun(section: str) -> str:
    """Return what one entry of a section is called.

    >>> noun("parts"), noun("axes")
    ('part', 'axis')
    """
    return _NOUNS.get(section, section.removesuffix("s"))
