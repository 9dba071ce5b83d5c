"""Every text in the language of sizes: readable, naming only what there is, giving a length where one is wanted."""

from __future__ import annotations

import re
from collections.abc import Iterator
from functools import cache

from scantling.errors import QuantityError, nearest
from scantling.model.design import Design
from scantling.model.expression import Between, ExpressionError, Feature, Name, Node, length_power, references, tree
from scantling.model.features import feature_name, length_fields
from scantling.model.part import Part
from scantling.reading.fields import field_types, sizes_in, value_type
from scantling.reading.graphs import depths
from scantling.reading.nodes import Path
from scantling.reading.scene import Scene

_MAY_BE_NUMBERS = ("sizes", "settings")


def sizes(scene: Scene) -> None:
    """Note texts that are no sizes, and names in them that lead nowhere."""
    trees = {path: node for path, text in size_texts(scene.design) if (node := _parsed(scene, path, text)) is not None}
    powers = _powers(scene, {str(path[1]): node for path, node in trees.items() if path[0] == "sizes"})
    for path, node in trees.items():
        for reference in references(node):
            _reference(scene, path, reference)
        if path[0] not in _MAY_BE_NUMBERS:
            _is_length(scene, path, node, powers)


def size_texts(design: Design) -> Iterator[tuple[Path, str]]:
    """Yield every size of a design with its path below the design."""
    types = field_types(Design)
    for section, annotation in types.items():
        entries = getattr(design, section, None)
        if isinstance(entries, dict):
            for name, value in entries.items():
                yield from sizes_in(value, value_type(annotation), (section, name))


def _parsed(scene: Scene, path: Path, text: str) -> Node | None:
    try:
        return tree(text)
    except ExpressionError as error:
        shift = max(scene.text("design", *path).find(text), 0)  # a sign may stand before it
        rest = text[error.offset :]
        offset = shift + error.offset + len(rest) - len(rest.lstrip())
        scene.add("36", error.what, error.mend, "design", *path, offset=offset)
    except QuantityError as error:
        scene.add("36", error.what, error.mend, "design", *path)
    return None


def _reference(scene: Scene, path: Path, reference: Name | Feature | Between) -> None:
    text = scene.text("design", *path)
    said_by = f"the size {text!r}"
    if isinstance(reference, Name):
        if not scene.knows("sizes", reference.name):
            is_place = reference.name in scene.design.places
            mend = f"name a feature of the place, as in {reference.name}.thickness" if is_place else ""
            mend = mend or nearest(reference.name, scene.design.sizes)
            what = f"{said_by} names {reference.name!r}, which is no size"
            scene.add("37", what, mend, "design", *path, offset=_offset(text, reference.name))
    elif isinstance(reference, Between):
        for place in (reference.a, reference.b):
            if place != "machine":
                scene.expect("places", place, said_by, "design", *path)
    elif scene.expect("places", reference.place, said_by, "design", *path):
        expect_feature(scene, said_by, path, reference)


def _offset(text: str, name: str) -> int:
    """Return how many characters stand before a name in a text."""
    found = re.search(rf"(?<![\w.-]){re.escape(name)}(?![\w-])", text)
    return found.start() if found else 0


def expect_feature(scene: Scene, said_by: str, path: Path, reference: Feature) -> None:
    """Note a fault where an option of the place cannot have the feature; ``path`` is below ``design``."""
    place = scene.design.places.get(reference.place)
    if place is None or (reference.feature == "length" and place.length is not None):
        return
    options = list(scene.options(reference.place))
    lacking = [option.part for option, part in options if not _has(part, reference.feature)]
    if lacking:
        known = dict.fromkeys(name for _, part in options for name in features_of(part))
        what = (
            f"{said_by} names {reference.feature!r} of the place {reference.place!r}, not had by {', '.join(lacking)}"
        )
        mend = f"{nearest(reference.feature, known)} Or add it to the part: sizes: {{{reference.feature}: …}}"
        offset = _offset(scene.text("design", *path), f"{reference.place}.{reference.feature}")
        scene.add("37", what, mend, "design", *path, offset=offset)


def _has(part: Part, word: str) -> bool:
    return feature_name(type(part), word) in features_of(part)


def features_of(part: Part) -> tuple[str, ...]:
    """Return the names of all lengths that a part can have."""
    return (*_of_kind(type(part)), *part.sizes)


@cache
def _of_kind(kind: type[Part]) -> tuple[str, ...]:
    return tuple(length_fields(kind))


def _powers(scene: Scene, nodes: dict[str, Node]) -> dict[str, int]:
    """Return for every size whether it is a length (1) or a number (0), those first on which others stand."""
    order = depths({name: sorted(_names(node)) for name, node in nodes.items()})
    powers: dict[str, int] = {}
    for name in sorted(order, key=lambda name: order[name]):
        powers[name] = _power(scene, ("sizes", name), nodes[name], powers)
    return powers


def _names(node: Node) -> set[str]:
    return {reference.name for reference in references(node) if isinstance(reference, Name)}


def _power(scene: Scene, path: Path, node: Node, powers: dict[str, int]) -> int:
    try:
        power = length_power(node, lambda name: powers.get(name, 1))
    except ExpressionError as error:
        scene.add("36", f"{error.what} in the size {scene.text('design', *path)!r}", error.mend, "design", *path)
        return 1
    if power not in (0, 1):
        what = f"the size {scene.text('design', *path)!r} is neither a length nor a number"
        scene.add("36", what, "see what is multiplied and divided", "design", *path)
        return 1
    return power


def _is_length(scene: Scene, path: Path, node: Node, powers: dict[str, int]) -> None:
    before = len(scene.faults.found)
    power = _power(scene, path, node, powers)
    if power != 1 and len(scene.faults.found) == before:
        what = f"the size {scene.text('design', *path)!r} is a number where a length is wanted"
        scene.add("36", what, "give it a unit, as in 20 mm", "design", *path)
