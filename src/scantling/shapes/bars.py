"""Bars cut to length: patterns, a quick layout, every cut; in whole tenths of a micrometre, so no piece is short.

A bar yields pieces whose lengths and the saw cuts between them fit its usable length: with kerf k, usable length C and
pieces w the rule is sum(w + k) <= C + k. Pieces, kerf and trimming are rounded up, bars down.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, field
from decimal import ROUND_CEILING, ROUND_FLOOR, Decimal

MOST_PATTERNS = 2000
_TICKS_PER_MM = 10_000
_MOST_STEPS = 400_000
_MOST_KINDS = 300
_MOST_PIECES = 20_000


@dataclass(frozen=True)
class Bar:
    """Stock of one length: ``count`` of it at hand, or as many as wanted (None).

    head_mm : lost at the first end, the facing cut included          tail_mm : not to be used at the other end
    """

    name: str
    length_mm: float
    count: int | None = None
    head_mm: float = 0.0
    tail_mm: float = 0.0


@dataclass(frozen=True)
class Piece:
    """A length that is wanted, so many times."""

    name: str
    length_mm: float
    quantity: int = 1


@dataclass(frozen=True)
class Patterns:
    """Ways to fill one bar, as counts in the order of the pieces; ``capped``: there are more than these."""

    counts: tuple[tuple[int, ...], ...]
    capped: bool


@dataclass(frozen=True)
class PlacedPiece:
    """Where on its bar a piece lies, from the bar's first end."""

    name: str
    start_mm: float
    end_mm: float


@dataclass(frozen=True)
class CutBar:
    """One bar cut up: its pieces from the first end on, the saw cuts between and after them, and what is left over."""

    bar: Bar
    pieces: tuple[PlacedPiece, ...]
    cuts: tuple[tuple[float, float], ...]
    rest_mm: float


@dataclass(frozen=True)
class BarLayout:
    """Bars in the order they are taken; ``misfits`` are names of pieces that no bar is long enough for."""

    bars: tuple[CutBar, ...]
    misfits: tuple[str, ...] = field(default=())


def ticks_up(length_mm: float) -> int:
    """Return a length in tenths of a micrometre, rounded up."""
    return int(_ticks(length_mm).to_integral_value(ROUND_CEILING))


def ticks_down(length_mm: float) -> int:
    """Return a length in tenths of a micrometre, rounded down."""
    return int(_ticks(length_mm).to_integral_value(ROUND_FLOOR))


def _ticks(length_mm: float) -> Decimal:
    """In decimal, to a tenth of a nanometre: 3/8 in is 9.525 mm, not the 9.524999999999999 of floating point."""
    return Decimal(repr(round(float(length_mm), 7))) * _TICKS_PER_MM


def usable_ticks(bar: Bar) -> int:
    """Return what of a bar can become pieces, in tenths of a micrometre."""
    return ticks_down(bar.length_mm) - ticks_up(bar.head_mm) - ticks_up(bar.tail_mm)


def fits(counts: Sequence[int], pieces: Sequence[Piece], bar: Bar, kerf_mm: float) -> bool:
    """True where so many of each piece can be cut from one bar."""
    kerf = ticks_up(kerf_mm)
    need = sum(n * (ticks_up(piece.length_mm) + kerf) for n, piece in zip(counts, pieces, strict=True))
    return need <= usable_ticks(bar) + kerf


def maximal_patterns(pieces: Sequence[Piece], bar: Bar, kerf_mm: float, cap: int = MOST_PATTERNS) -> Patterns:
    """Return all ways to fill a bar to which no wanted piece can be added, at most ``cap`` of them.

    No pattern holds more of a piece than is wanted. Every other way to fill a bar is a part of one of these.
    Beyond 300 lengths none are listed: there are far more patterns than any use has for them.
    """
    if len(pieces) > _MOST_KINDS:
        return Patterns((), capped=True)
    kerf = ticks_up(kerf_mm)
    order = sorted(range(len(pieces)), key=lambda i: (-pieces[i].length_mm, i))
    sizes = [ticks_up(pieces[i].length_mm) + kerf for i in order]
    wanted = [pieces[i].quantity for i in order]
    found: list[tuple[int, ...]] = []
    search = _Search(sizes, wanted)
    for counts in search.fill(usable_ticks(bar) + kerf):
        if len(found) == cap:
            return Patterns(tuple(found), capped=True)
        back = dict(zip(order, counts, strict=True))
        found.append(tuple(back[i] for i in range(len(pieces))))
    return Patterns(tuple(found), capped=search.steps >= _MOST_STEPS)


@dataclass
class _Search:
    """Depth first over the sizes, largest first, most pieces first."""

    sizes: list[int]
    wanted: list[int]
    steps: int = 0

    def fill(self, room: int) -> Iterator[tuple[int, ...]]:
        """Yield maximal counts; nothing where not even one piece fits."""
        later = [0] * (len(self.sizes) + 1)
        for i in reversed(range(len(self.sizes))):
            later[i] = later[i + 1] + self.sizes[i] * self.wanted[i]
        never = room + later[0] + 1
        for counts in self._fill(0, room, never, later, ()):
            if any(counts):
                yield counts

    def _fill(
        self, i: int, room: int, smallest: int, later: list[int], counts: tuple[int, ...]
    ) -> Iterator[tuple[int, ...]]:
        """``smallest`` is the smallest size left short so far: it must not fit into what stays over at the end."""
        self.steps += 1
        if room - later[i] >= smallest or self.steps >= _MOST_STEPS:
            return
        if i == len(self.sizes):
            yield counts
            return
        most = min(self.wanted[i], room // self.sizes[i])
        for n in range(most, -1, -1):
            short = smallest if n == self.wanted[i] else min(smallest, self.sizes[i])
            yield from self._fill(i + 1, room - n * self.sizes[i], short, later, (*counts, n))


def lay_out(counts: Sequence[int], pieces: Sequence[Piece], bar: Bar, kerf_mm: float) -> CutBar:
    """Return where the pieces of a pattern lie and where the saw goes, longest first.

    The last piece is cut off too, unless it ends exactly with the bar. ``rest_mm`` is what can still be used.
    """
    if not fits(counts, pieces, bar, kerf_mm):
        raise ValueError(f"{list(counts)} of {[p.length_mm for p in pieces]} mm do not fit into {bar.length_mm} mm")
    kerf, at, end = ticks_up(kerf_mm), ticks_up(bar.head_mm), ticks_up(bar.head_mm) + usable_ticks(bar)
    placed, cuts = [], []
    order = sorted(range(len(pieces)), key=lambda i: (-pieces[i].length_mm, i))
    for i in [k for k in order for _ in range(counts[k])]:
        stop = at + ticks_up(pieces[i].length_mm)
        placed.append(PlacedPiece(pieces[i].name, at / _TICKS_PER_MM, stop / _TICKS_PER_MM))
        if stop < ticks_down(bar.length_mm):
            cuts.append((stop / _TICKS_PER_MM, min(stop + kerf, ticks_down(bar.length_mm)) / _TICKS_PER_MM))
        at = stop + kerf
    return CutBar(bar, tuple(placed), tuple(cuts), max(0, end - at) / _TICKS_PER_MM)


def best_fit_decreasing(pieces: Sequence[Piece], bars: Sequence[Bar], kerf_mm: float) -> BarLayout:
    """Return a quick layout: longest piece first, each into the bar that it fills best.

    Bars are opened in the order given, the first that is long enough; so offcuts at hand come first in the list.
    An upper bound on the bars needed, never a proof of the fewest.
    """
    total = sum(piece.quantity for piece in pieces)
    if total > _MOST_PIECES:
        raise ValueError(f"{total} pieces to cut, the limit is {_MOST_PIECES}")
    kerf = ticks_up(kerf_mm)
    left = [bar.count for bar in bars]
    opened: list[_Opened] = []
    misfits = []
    for i in sorted(range(len(pieces)), key=lambda i: (-pieces[i].length_mm, i)):
        size = ticks_up(pieces[i].length_mm) + kerf
        for _ in range(pieces[i].quantity):
            fitting = [bar for bar in opened if bar.room >= size]
            target = (
                min(fitting, key=lambda bar: bar.room)
                if fitting
                else _open(bars, left, size, kerf, opened, len(pieces))
            )
            if target is None:
                misfits.append(pieces[i].name)
                continue
            target.room -= size
            target.counts[i] += 1
    return BarLayout(tuple(lay_out(bar.counts, pieces, bar.bar, kerf_mm) for bar in opened), tuple(misfits))


@dataclass
class _Opened:
    bar: Bar
    room: int
    counts: list[int]


def _open(
    bars: Sequence[Bar], left: list[int | None], size: int, kerf: int, opened: list[_Opened], kinds: int
) -> _Opened | None:
    for index, bar in enumerate(bars):
        count, room = left[index], usable_ticks(bar) + kerf
        if count != 0 and room >= size:
            left[index] = None if count is None else count - 1
            opened.append(_Opened(bar, room, [0] * kinds))
            return opened[-1]
    return None


def least_bars(pieces: Sequence[Piece], bar: Bar, kerf_mm: float) -> int:
    """Return a number of bars that no layout gets below, for one kind of bar.

    Pieces over half a bar need one each, and what is longer than a threshold cannot lie beside the longest of them;
    the best such bound over all thresholds (Martello and Toth's L2, from memory).
    """
    kerf = ticks_up(kerf_mm)
    room = usable_ticks(bar) + kerf
    sizes = sorted((ticks_up(p.length_mm) + kerf for p in pieces for _ in range(p.quantity)), reverse=True)
    best = -(-sum(sizes) // room) if sizes and room > 0 else 0
    for low in sorted({size for size in sizes if 2 * size <= room}):
        alone = sum(1 for size in sizes if size > room - low)
        half = [size for size in sizes if room < 2 * size and size <= room - low]
        small = sum(size for size in sizes if low <= size and 2 * size <= room)
        spill = small - (len(half) * room - sum(half))
        best = max(best, alone + len(half) + max(0, -(-spill // room)))
    return max(best, sum(1 for size in sizes if 2 * size > room))
