"""Sizes: expressions over features of the chosen parts and distances between places, with their bands."""

from __future__ import annotations

from scantling.build.features import feature_path, part_feature
from scantling.build.missing import NotDescribedError, each, gather
from scantling.build.placement import FACES, ON_PARENT, ORIGIN, Placed, after, apart, turned, within
from scantling.build.reader import Reader
from scantling.errors import BrokenPromiseError
from scantling.model.expression import Between, Binary, Choice, Feature, Name, Negative, Node, Number, tree
from scantling.quantities import Figure, Grade

ZERO = Figure.exact(0.0)


def size(reader: Reader, text: str) -> Figure:
    """Return the value of a size, in mm where it is a length; raises ``NotDescribedError``."""
    return _value(reader, tree(text), text)


def feature(reader: Reader, place: str, name: str) -> Figure:
    """Return a feature in mm of the part in ``place``; 0 where the place is empty.

    ``length`` is that of the place's pieces where the place says it, else that of the part.
    """
    part = reader.part(place)
    if part is None:
        return ZERO
    length = reader.design.places[place].length
    if name == "length" and length is not None:
        return reader.derive(size, length)
    found = part_feature(part, name)
    if found is None:
        raise NotDescribedError((feature_path(part, name),))
    return found


def origin(reader: Reader, place: str) -> Placed:
    """Return where a place sits on the machine."""
    return _seen_from(reader, _parents(reader, place))


def distance(reader: Reader, a: str, b: str) -> Figure:
    """Return the distance in mm between the origins of two places; what both stand on does not count."""
    up_a, up_b = _parents(reader, a), _parents(reader, b)
    common = next((place for place in up_a if place in up_b), None)
    short_a = up_a[: up_a.index(common)] if common is not None else up_a
    short_b = up_b[: up_b.index(common)] if common is not None else up_b
    from_a, from_b = gather(lambda: _seen_from(reader, short_a), lambda: _seen_from(reader, short_b))
    return apart(from_a.at, from_b.at)


def on_parent(reader: Reader, place: str) -> Placed:
    """Return where a place sits in what it is placed on."""
    described = reader.design.places[place]
    if described.at is None and described.on == "machine":
        raise NotDescribedError((f"places.{place}.at",))
    x, y, z = ORIGIN
    if described.at is not None:
        x, y, z = each(lambda text: reader.derive(size, text), described.at)
    turn = turned(described.turn_deg.value if described.turn_deg is not None else 0.0)
    return Placed(x, y, z, after(turn, FACES[described.face]))


def _parents(reader: Reader, place: str) -> tuple[str, ...]:
    """The place and all that it stands on, up to the machine."""
    chain = [place]
    while (on := reader.design.places[chain[-1]].on) != "machine":
        if on in chain:
            raise BrokenPromiseError(f"place {place} stands on itself")
        chain.append(on)
    return tuple(chain)


def _seen_from(reader: Reader, chain: tuple[str, ...]) -> Placed:
    """The first of a chain of places, seen from what the last stands on."""
    seen = ON_PARENT
    for here in reversed(each(lambda place: reader.derive(on_parent, place), chain)):
        seen = within(seen, here)
    return seen


def _value(reader: Reader, node: Node, text: str) -> Figure:
    if isinstance(node, Number):
        return node.figure
    if isinstance(node, Name):
        if node.name not in reader.design.sizes:
            raise NotDescribedError((f"sizes.{node.name}",))
        return reader.derive(size, reader.design.sizes[node.name])
    if isinstance(node, Feature):
        return reader.derive(feature, node.place, node.feature)
    if isinstance(node, Between):
        return reader.derive(distance, node.a, node.b)
    if isinstance(node, Negative):
        return ZERO - _value(reader, node.operand, text)
    operands = (node.left, node.right) if isinstance(node, Binary) else node.operands
    values = each(lambda part: _value(reader, part, text), operands)
    return _calculated(node, values, text)


def _calculated(node: Binary | Choice, values: list[Figure], text: str) -> Figure:
    if isinstance(node, Choice):
        choose = min if node.function == "min" else max
        grade = Grade.TYPICAL if any(v.grade is Grade.TYPICAL for v in values) else values[0].grade
        value, low, high = (choose(ends) for ends in zip(*((v.value, v.low, v.high) for v in values), strict=True))
        return Figure(value, low, high, grade)
    a, b = values
    if node.operator == "/" and b.low <= 0 <= b.high:
        raise NotDescribedError((f"a size that does not divide by zero instead of {text!r}",))
    return {"+": a.__add__, "-": a.__sub__, "*": a.__mul__, "/": a.__truediv__}[node.operator](b)
