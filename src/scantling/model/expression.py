"""The language of sizes: ``y-span + 2 * back-panel.thickness + 20 mm``, ``front-panel to back-panel``, ``min(a, b)``.

``+ - * /``, ``min``, ``max``, brackets, lengths with their unit, plain numbers as factors, names of sizes, features of
places, and ``A to B`` (the distance between two places, which binds tighter than ``*``). No conditions, no loops.
A dash inside a name belongs to the name: ``y-span`` is one name, ``y - span`` a difference. A length that stands alone
may have a tolerance, ``20 mm ± 0.1 mm`` or ``20 mm +0.3/-0.1 mm``; whatever could be a tolerance or a sum is refused.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from functools import cache

from scantling.errors import QuantityError
from scantling.quantities import DIMENSIONS, Figure, exact_number, parse_figure

LONGEST_TEXT = 400
DEEPEST = 40


@dataclass(frozen=True)
class Number:
    """A written length in mm (``power`` 1) or a plain number (``power`` 0)."""

    figure: Figure
    power: int


@dataclass(frozen=True)
class Name:
    """Another size of the design."""

    name: str


@dataclass(frozen=True)
class Feature:
    """A feature of the part in a place: ``back-panel.thickness``."""

    place: str
    feature: str


@dataclass(frozen=True)
class Between:
    """The distance between the origins of two places."""

    a: str
    b: str


@dataclass(frozen=True)
class Negative:
    """Minus something."""

    operand: Node


@dataclass(frozen=True)
class Binary:
    """Two operands with ``+ - *`` or ``/`` between them."""

    operator: str
    left: Node
    right: Node


@dataclass(frozen=True)
class Choice:
    """The least or the greatest of several."""

    function: str
    operands: tuple[Node, ...]


Node = Number | Name | Feature | Between | Negative | Binary | Choice


class ExpressionError(QuantityError):
    """A text that is no size; ``offset`` counts the characters before the trouble."""

    def __init__(self, what: str, mend: str, offset: int = 0) -> None:
        """Keep the place inside the text."""
        super().__init__(what, mend)
        self.offset = offset


def parse_size(text: str) -> Node:
    """Return the tree of a size; raises ``ExpressionError``.

    >>> parse_size("y-span - 2 * panel.thickness").operator
    '-'
    """
    plain = text.strip()
    if not plain or len(plain) > LONGEST_TEXT:
        raise ExpressionError(f"{plain[:40]!r} is no size", "write a size such as y-span + 20 mm")
    banded = _banded(plain)
    return banded if banded is not None else _Parser(plain).whole()


@cache
def tree(text: str) -> Node:
    """Return the tree of a size that was read before; remembered."""
    return parse_size(text)


def parts_of(node: Node) -> tuple[Node, ...]:
    """Return what a node is directly made of."""
    if isinstance(node, Binary):
        return (node.left, node.right)
    if isinstance(node, Negative):
        return (node.operand,)
    return node.operands if isinstance(node, Choice) else ()


def references(node: Node) -> Iterator[Name | Feature | Between]:
    """Yield every name, feature and distance in a size, in the order of the text."""
    if isinstance(node, Name | Feature | Between):
        yield node
    for part in parts_of(node):
        yield from references(part)


def places_of(node: Node) -> tuple[str, ...]:
    """Return the places that a size names itself, each once."""
    found: list[str] = []
    for reference in references(node):
        if isinstance(reference, Feature):
            found.append(reference.place)
        elif isinstance(reference, Between):
            found += [reference.a, reference.b]
    return tuple(dict.fromkeys(found))


def length_power(node: Node, of_name: Callable[[str], int]) -> int:
    """Return 1 for a length, 0 for a plain number, 2 for an area …; ``of_name`` tells it of another size.

    Raises ``ExpressionError`` where a length is added to a number.
    """
    if isinstance(node, Number):
        return node.power
    if isinstance(node, Name):
        return of_name(node.name)
    if isinstance(node, Feature | Between):
        return 1
    powers = [length_power(part, of_name) for part in parts_of(node)]
    if isinstance(node, Binary) and node.operator in "*/":
        return powers[0] + powers[1] if node.operator == "*" else powers[0] - powers[1]
    if len(set(powers)) > 1:
        raise ExpressionError("a length and a plain number are added or compared", "give the number a unit: 20 mm")
    return powers[0]


_UNITS = DIMENSIONS["length"].units
_UNIT = "|".join(re.escape(word) for word in sorted(_UNITS, key=lambda word: (-len(word), word)))
_PLAIN = r"(?:[0-9]+(?:[.,][0-9]+)*|\.[0-9]+)(?:[eE][+-]?[0-9]+)?"
_FRACTIONS = r"[0-9]+\s+[0-9]+/[0-9]+|[0-9]+/[0-9]+"
_WORD = r"[A-Za-z_][A-Za-z0-9_]*(?:-[A-Za-z0-9_]+)*"


def _token(number: str) -> re.Pattern[str]:
    return re.compile(
        rf"\s*(?:(?P<number>{number})(?:\s*(?P<unit>{_UNIT})(?![A-Za-z0-9_.]))?"
        rf"|(?P<word>{_WORD})(?:\.(?P<feature>{_WORD}))?|(?P<sign>[-+*/(),]))"
    )


_TOKEN = _token(f"{_FRACTIONS}|{_PLAIN}")
_TOKEN_AFTER_SLASH = _token(_PLAIN)  # ``x / 2 / 3`` is a sixth of x, not x over two thirds
_LOOKS = str.maketrans({"−": "-", "×": "*", "·": "*", "\u00a0": " ", "”": '"', "″": '"'})


_MEASURE = rf"(?:{_PLAIN})\s*(?:{_UNIT})?"
_DEVIATIONS = re.compile(rf"(?:\+|(?<![A-Za-z0-9_])-)\s?{_MEASURE}\s*/\s*(?:[+-]\s?{_MEASURE}|0(?![0-9.,]))")
_SPLIT_DEVIATIONS = re.compile(rf"{_MEASURE}\s*(?P<first>[+-]){_MEASURE}\s*(?P<second>[+-]){_MEASURE}")


def _banded(text: str) -> Number | None:
    """``20 mm ± 0.1 mm`` or ``20 mm +0.3/-0.1 mm`` alone is a length with its band."""
    plain = text.translate(_LOOKS)
    split = _SPLIT_DEVIATIONS.fullmatch(plain)
    if split and split["first"] != split["second"]:
        mend = "write a tolerance as 20 mm +0.3/-0.1 mm, a sum with blanks round its signs: 20 mm + 0.3 mm - 0.1 mm"
        raise ExpressionError(f"{text!r} may be a tolerance or a sum", mend)
    if not (deviations := _DEVIATIONS.search(plain)) and not re.search(r"±|\+/-|\+-|\.\.", plain):
        return None
    try:
        return Number(parse_figure(plain, "length"), 1)
    except QuantityError as error:
        if deviations is None:
            raise ExpressionError(error.what, error.mend) from None
        mend = "a tolerance goes with a length that stands alone, its unit once at the end: 20 mm +0.3/-0.1 mm; that "
        mend += "of another size has a key of its own in a chain: tolerance: +0.3/-0.1 mm"
        raise ExpressionError(f"{text!r} is no size with a tolerance", mend, deviations.start()) from None


class _Parser:
    """Recursive descent over the tokens of one text."""

    def __init__(self, text: str) -> None:
        self.text = text.translate(_LOOKS)
        self.tokens: list[re.Match[str]] = list(self._split())
        self.at = 0
        self.depth = 0

    def _split(self) -> Iterator[re.Match[str]]:
        place, pattern = 0, _TOKEN
        while self.text[place:].strip():
            found = pattern.match(self.text, place)
            if found is None:
                raise self._error(
                    f"{self.text[place:].strip()[:20]!r} cannot be read", "write + - * / ( ) and names", place
                )
            yield found
            place, pattern = found.end(), _TOKEN_AFTER_SLASH if found["sign"] == "/" else _TOKEN

    def _error(self, what: str, mend: str, offset: int) -> ExpressionError:
        return ExpressionError(f"{what} in the size {self.text!r}", mend, offset)

    def _here(self) -> int:
        return self.tokens[self.at].start() if self.at < len(self.tokens) else len(self.text)

    def _sign(self, *wanted: str) -> str | None:
        if self.at < len(self.tokens) and self.tokens[self.at]["sign"] in wanted:
            self.at += 1
            return self.tokens[self.at - 1]["sign"]
        return None

    def _expect(self, sign: str) -> None:
        if self._sign(sign) is None:
            raise self._error(f"{sign!r} is missing", f"add {sign!r}", self._here())

    def whole(self) -> Node:
        """Read everything."""
        node = self._sum()
        if self.at < len(self.tokens):
            token = self.tokens[self.at]
            rest = token.group().strip()
            mend = f"write an operator before {rest}, as in 2 * {rest}"
            if token["word"] and self.at and self.tokens[self.at - 1]["number"]:
                mend = f"if {rest} is a unit, write one of {', '.join(DIMENSIONS['length'].main_units)}; else {mend}"
            raise self._error(f"{rest!r} comes unexpected", mend, self._here())
        return node

    def _sum(self) -> Node:
        self.depth += 1
        if self.depth > DEEPEST:
            raise self._error("too many brackets", "name parts of it as sizes of their own", self._here())
        node = self._product()
        while sign := self._sign("+", "-"):
            node = Binary(sign, node, self._product())
        self.depth -= 1
        return node

    def _product(self) -> Node:
        node = self._factor()
        while sign := self._sign("*", "/"):
            node = Binary(sign, node, self._factor())
        return node

    def _factor(self) -> Node:
        if self._sign("-"):
            return Negative(self._factor_once())
        return self._factor_once()

    def _factor_once(self) -> Node:
        if self._sign("("):
            node = self._sum()
            self._expect(")")
            return node
        if self.at >= len(self.tokens) or self.tokens[self.at]["sign"]:
            raise self._error("something is missing", "write a length, a name or a feature there", self._here())
        token = self.tokens[self.at]
        self.at += 1
        return self._number(token) if token["number"] else self._word(token)

    def _number(self, token: re.Match[str]) -> Node:
        try:
            value = exact_number(token["number"])
        except QuantityError as error:
            raise self._error(error.what, error.mend, token.start()) from None
        unit = _UNITS[token["unit"]] if token["unit"] else None
        return Number(Figure.exact(float(value * unit.factor if unit else value)), 1 if unit else 0)

    def _word(self, token: re.Match[str]) -> Node:
        word, feature = token["word"], token["feature"]
        if word in ("min", "max") and not feature and self._sign("("):
            return self._choice(word)
        if feature:
            return Feature(word, feature)
        following = self.tokens[self.at] if self.at < len(self.tokens) else None
        if following is None or following["word"] != "to" or following["feature"]:
            return Name(word)
        self.at += 1
        other = self.tokens[self.at] if self.at < len(self.tokens) else None
        if other is None or not other["word"] or other["feature"]:
            raise self._error("a place is missing after 'to'", "write PLACE to PLACE", self._here())
        self.at += 1
        return Between(word, other["word"])

    def _choice(self, function: str) -> Node:
        operands = [self._sum()]
        while self._sign(","):
            operands.append(self._sum())
        self._expect(")")
        return Choice(function, tuple(operands))
