"""SVG text to a safe, bounded tree: no entities, no bombs of ``use``, and only what is drawn left in it."""

from __future__ import annotations

import re
from dataclasses import dataclass, field
from typing import Any

from scantling.errors import Fault, FaultsError, Where, nearest
from scantling.shapes.drawn import MOST_EDGES, refuse_large

MOST_ELEMENTS = 200_000
_DEEPEST = 250
_SPACE = "{http://www.w3.org/2000/svg}"
_FIGURE = re.compile(r"[0-9.]+")
_LINK = "{http://www.w3.org/1999/xlink}href"

# drawn only through a reference that means something else than drawing them
_NEVER_DRAWN = {
    "mask",
    "marker",
    "pattern",
    "clipPath",
    "filter",
    "linearGradient",
    "radialGradient",
    "metadata",
    "script",
}


@dataclass
class SvgTree:
    """The root element, and what was found on the way: layers by name, what a clip or a mask cuts, what is hidden."""

    root: Any
    layers: list[str] = field(default_factory=list)
    clipped: int = 0
    hidden: int = 0
    figures: int = 0


def parse_svg(data: bytes, file: str) -> SvgTree:
    """Return the tree of an SVG file.

    Raises FaultsError: SHAPE-01 too large, SHAPE-02 not SVG, SHAPE-14 entities, SHAPE-15 nested or repeated too much.
    """
    refuse_large(data, file)
    root = _parsed(data, file)
    if root.tag not in (_SPACE + "svg", "svg"):
        raise FaultsError(
            [Fault("SHAPE-02", f"this is no SVG file: it begins with <{_name(root)}>", "export it as SVG", Where(file))]
        )
    tree = SvgTree(root)
    _prune(root, tree, file)
    _refuse_repetition(root, file)
    return tree


def _parsed(data: bytes, file: str) -> Any:
    from defusedxml import ElementTree
    from defusedxml.common import DefusedXmlException

    try:
        return ElementTree.fromstring(data, forbid_dtd=False, forbid_entities=True, forbid_external=True)
    except DefusedXmlException as error:
        what = "the file defines entities of its own, which is refused: they can grow without end or read other files"
        raise _refused("SHAPE-14", what, "save it as plain SVG", file) from error
    except ElementTree.ParseError as error:
        line, column = getattr(error, "position", (0, 0))
        what = f"this is not well-formed SVG: {str(error).partition(':')[0]}"
        raise _refused("SHAPE-02", what, "save it again; it may be cut off", file, line, column + 1) from error
    except (ValueError, LookupError, RecursionError) as error:
        raise _refused("SHAPE-02", f"this is not SVG: {error}", "save it again", file) from error


def _refused(code: str, what: str, mend: str, file: str, line: int = 0, column: int = 0) -> FaultsError:
    return FaultsError([Fault(code, what, mend, Where(file, line, column))])


def _name(element: Any) -> str:
    tag = element.tag if isinstance(element.tag, str) else "?"
    return tag.rpartition("}")[2]


def _prune(root: Any, tree: SvgTree, file: str) -> None:
    """Drop what is never drawn, keep symbols for ``use`` only, note the rest; no recursion, so no depth harms."""
    todo = [(root, 1)]
    while todo:
        element, depth = todo.pop()
        if depth > _DEEPEST:
            raise _refused("SHAPE-15", f"elements are nested more than {_DEEPEST} deep", "ungroup it", file)
        _look_at(element, tree)
        if tree.figures > 6 * MOST_EDGES:  # the longest kind of edge is written with six
            what = f"the drawing has more than {MOST_EDGES} edges"
            raise _refused("SHAPE-01", what, "keep only what is to be cut in it", file)
        for child in list(element):
            if not isinstance(child.tag, str) or _name(child) in _NEVER_DRAWN:
                element.remove(child)
                continue
            if _name(child) == "symbol":
                _to_definition(element, child, file)
            todo.append((child, depth + 1))


def _look_at(element: Any, tree: SvgTree) -> None:
    """Note what one element adds."""
    tree.figures += sum(len(_FIGURE.findall(element.get(key) or "")) for key in ("d", "points"))
    tree.clipped += int(bool(element.get("clip-path") or element.get("mask")))
    style = (element.get("style") or "").replace(" ", "")
    tree.hidden += int(element.get("display") == "none" or "display:none" in style)
    if _name(element) == "g" and layer_name(element):
        tree.layers.append(layer_name(element))


def _to_definition(parent: Any, symbol: Any, file: str) -> None:
    """A symbol becomes a group among definitions; one with its own view box scales, which is not followed here."""
    if symbol.get("viewBox"):
        what = f"symbol {symbol.get('id', '')!r} has a view box of its own"
        raise _refused("SHAPE-02", what, "turn the copies of it into plain objects", file)
    place = list(parent).index(symbol)
    parent.remove(symbol)
    symbol.tag = _SPACE + "g"
    holder = symbol.makeelement(_SPACE + "defs", {})
    holder.append(symbol)
    parent.insert(place, holder)


def layer_name(element: Any) -> str:
    """The name of a group as a drawing program shows it: its label, else its identifier."""
    label = next((value for key, value in element.attrib.items() if key.endswith("}label")), "")
    return label or element.get("id", "")


def keep_layer(tree: SvgTree, layer: str, file: str) -> None:
    """Hide all that is drawn outside the groups of that name; copies of it elsewhere may still be drawn.

    Raises FaultsError (SHAPE-06) where there is no such group.
    """
    if layer.lower() not in {name.lower() for name in tree.layers}:
        what = f"there is no layer or group called {layer!r}"
        raise _refused("SHAPE-06", what, nearest(layer, tree.layers), file)
    _keep(tree.root, layer.lower())


def _keep(element: Any, layer: str) -> bool:
    """True where the element is of the layer or holds something that is; recursion is bounded by the depth above."""
    if _name(element) == "g" and layer_name(element).lower() == layer:
        return True
    kept = False
    for child in list(element):
        if _name(child) in ("defs", "style"):
            continue
        if _keep(child, layer):
            kept = True
        else:
            child.set("display", "none")
    return kept


def _refuse_repetition(root: Any, file: str) -> None:
    """Count the elements with every ``use`` written out, and stop where they multiply or lead to themselves."""
    by_id = {element.get("id"): element for element in root.iter() if element.get("id")}
    counts: dict[int, int] = {}
    open_now: set[int] = set()

    def count(element: Any, depth: int) -> int:
        key = id(element)
        if key in counts:
            return counts[key]
        if key in open_now or depth > _DEEPEST:
            what = f"a <use> of {element.get('id', '')!r} leads to itself or too deep"
            raise _refused("SHAPE-15", what, "turn copies into plain objects", file)
        open_now.add(key)
        total = 1 + sum(count(child, depth + 1) for child in element)
        target = (
            by_id.get((element.get("href") or element.get(_LINK) or "").lstrip("#"))
            if _name(element) == "use"
            else None
        )
        if target is not None:
            total += count(target, depth + 1)
        open_now.discard(key)
        counts[key] = total
        return total

    if count(root, 0) > MOST_ELEMENTS:
        what = f"the drawing has more than {MOST_ELEMENTS} elements, its copies written out"
        raise _refused("SHAPE-01", what, "keep only what is to be cut in it", file)
