"""Everything that was read, laid out for the rules that look across entries, with the place of each value."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field

from scantling.errors import NOWHERE, Where, nearest
from scantling.model.design import Design
from scantling.model.part import Part
from scantling.model.place import StandIn
from scantling.model.workshop import Workshop
from scantling.reading.collecting import Faults
from scantling.reading.document import Document, noun
from scantling.reading.nodes import Entries, Items, Node, Text, child_of
from scantling.shapes.outline import Outline
from scantling.tables.fastener_names import is_standard_fastener


@dataclass
class Scene:
    """A design and its workshop as far as they could be read.

    is_shared : the workshop's file lies outside the design's folder, so it may name parts of other designs
    """

    design_file: Document[Design]
    shop_file: Document[Workshop] | None
    faults: Faults
    outlines: Mapping[str, Outline] = field(default_factory=dict)
    is_shared: bool = False

    @property
    def design(self) -> Design:
        """The design, without what was refused."""
        return self.design_file.value

    @property
    def workshop(self) -> Workshop | None:
        """The workshop, without what was refused; None where none was asked for."""
        return self.shop_file.value if self.shop_file is not None else None

    def add(self, code: str, what: str, mend: str, *path: str | int, offset: int = 0) -> None:
        """Note a fault; ``path`` begins with ``design`` or ``workshop``, ``offset`` counts into the text there."""
        self.faults.add(code, what, mend, self.where(*path, offset=offset))

    def where(self, *path: str | int, offset: int = 0) -> Where:
        """Return the place of a value, or of the nearest thing around it."""
        document = self.design_file if path[:1] == ("design",) else self.shop_file
        if document is None:
            return NOWHERE
        node, where = document.tree, document.tree.where
        for step in path[1:]:
            child = child_of(node, step) or _item_called(node, step)
            if child is None:
                return where
            where = child.where if isinstance(child, Text) or not isinstance(node, Entries) else node.keys[str(step)]
            if isinstance(child, Text):
                on_one_line = "\n" not in child.value
                shift = child.shift + offset if on_one_line and offset else 0
                return Where(where.file, where.line, where.column + shift)
            node = child  # type: ignore[assignment]
        return where

    def text(self, *path: str | int) -> str:
        """Return the text that stands at a path, "" where none does."""
        document = self.design_file if path[:1] == ("design",) else self.shop_file
        node = None if document is None else document.tree
        for step in path[1:]:
            child = child_of(node, step) if node is not None else None
            if isinstance(child, Text):
                return child.value
            node = child  # type: ignore[assignment]
        return ""

    def knows(self, section: str, name: str) -> bool:
        """True where a section of the design has such an entry, or may have had it before something was refused."""
        document = self.design_file
        return (
            name in getattr(document.value, section)
            or name in document.broken.get(section, ())
            or section in document.lost
        )

    def is_complete(self, *sections: str) -> bool:
        """True where nothing of these sections of the design was refused."""
        document = self.design_file
        return not any(section in document.lost or document.broken.get(section) for section in sections)

    def expect(self, section: str, name: str, said_by: str, *path: str | int) -> bool:
        """Note a fault where a section of the design has no such entry; true where it has."""
        if self.knows(section, name):
            return True
        what = f"{said_by} names the {noun(section)} {name!r}, which is not described"
        self.add("30", what, nearest(name, getattr(self.design, section)), *path)
        return False

    def expect_part(self, name: str, said_by: str, *path: str | int) -> bool:
        """Note a fault for what is neither a part of the design nor a standard fastener."""
        if self.knows("parts", name) or is_standard_fastener(name):
            return True
        what = f"{said_by} names the part {name!r}, which is not described"
        self.add("30", what, nearest(name, self.design.parts), *path)
        return False

    def options(self, place: str) -> Iterator[tuple[StandIn, Part]]:
        """Yield the options of a place whose parts are described in the design."""
        found = self.design.places.get(place)
        for option in found.options if found is not None else ():
            part = self.design.parts.get(option.part)
            if part is not None:
                yield option, part

    def expect_kind(self, place: str, kinds: tuple[type[Part], ...], said_by: str, *path: str | int) -> None:
        """Note a fault where a place is unknown or any of its options is of none of these kinds."""
        if not self.expect("places", place, said_by, *path):
            return
        words = " or a ".join(str(kind.model_fields["kind"].default) for kind in kinds)
        for option, part in self.options(place):
            if not isinstance(part, kinds):
                kind = getattr(part, "kind", "part")
                what = f"{said_by} takes a {words} in the place {place!r}, but {option.part!r} is a {kind}"
                self.add("39", what, "name another place, or give that place other options", *path)


def _item_called(node: Node, step: str | int) -> Text | None:
    """``uses: [bed]`` stands for ``uses: {bed: all}``: the item is where the key would be."""
    if not isinstance(node, Items):
        return None
    return next((item for item in node.items if isinstance(item, Text) and item.value == step), None)
