"""Which sets of bars suffice for some pieces: all smallest ones, exactly, and how to cut one of them.

A search over what is still to be cut: the longest piece left lies on some bar, which may as well be filled with a
fullest pattern. What is found for each rest is remembered.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from scantling.choosing.patterns import Bar, Pattern

MOST_RESTS = 3_000
MOST_WORK = 40_000
Counts = tuple[int, ...]


class TooManyRestsError(Exception):
    """The pieces leave too many rests to look through."""


class BarSets:
    """The smallest sets of bars of some lengths, for any pieces of some lengths (longest first)."""

    def __init__(self, bars: Sequence[Bar], lengths_um: Sequence[int]) -> None:
        """Remember nothing yet."""
        self.bars = tuple(bars)
        self.lengths_um = tuple(sorted(lengths_um, reverse=True))
        self._known: dict[Counts, tuple[Counts, ...]] = {}
        self._work = 0

    def smallest(self, pieces: Mapping[int, int]) -> tuple[Counts, ...]:
        """Return all sets, as bars of each length, of which none holds another and each suffices; none where a piece
        fits on no bar. Raises ``TooManyRestsError``.
        """
        rest = tuple(pieces.get(um, 0) for um in self.lengths_um)
        rests = 1
        for count in rest:
            rests *= count + 1
        if rests > MOST_RESTS:
            raise TooManyRestsError(f"{rests} rests")
        return self._sets(rest)

    def cut(self, pieces: Mapping[int, int], have: Counts) -> list[tuple[int, Pattern]] | None:
        """Return (length of bar, pattern) of each bar cut, out of those there are; None where they do not suffice."""
        rest = tuple(pieces.get(um, 0) for um in self.lengths_um)
        found: list[tuple[int, Pattern]] = []
        while any(rest):
            step = next(self._steps_within(rest, have), None)
            if step is None:
                return None
            number, filled, rest = step
            have = _less(have, number)
            found.append((self.bars[number].length_um, self._pattern(filled)))
        return sorted(found)

    def _steps_within(self, rest: Counts, have: Counts) -> Iterator[tuple[int, Counts, Counts]]:
        for number, filled in self._fillings(rest):
            after = tuple(a - b for a, b in zip(rest, filled, strict=True))
            if have[number] and any(_within(s, _less(have, number)) for s in self._sets(after)):
                yield number, filled, after

    def _pattern(self, filled: Counts) -> Pattern:
        return tuple((um, count) for um, count in zip(self.lengths_um, filled, strict=True) if count)

    def _sets(self, rest: Counts) -> tuple[Counts, ...]:
        if not any(rest):
            return (tuple(0 for _ in self.bars),)
        known = self._known.get(rest)
        if known is None:
            found: list[Counts] = []
            for number, filled in self._fillings(rest):
                after = tuple(a - b for a, b in zip(rest, filled, strict=True))
                found += [_more(bars, number) for bars in self._sets(after)]
            self._known[rest] = known = _undominated(found)
        return known

    def _fillings(self, rest: Counts) -> Iterator[tuple[int, Counts]]:
        """Yield each bar with each fullest filling that holds the longest piece left."""
        first = next(number for number, count in enumerate(rest) if count)
        for number, bar in enumerate(self.bars):
            room = bar.room_um - bar.width_um(self.lengths_um[first])
            if room >= 0:
                for filled in self._filled(bar, rest, first, room):
                    yield number, filled
            elif self.lengths_um[first] == bar.length_um:
                yield number, tuple(int(place == first) for place in range(len(rest)))

    def _filled(self, bar: Bar, rest: Counts, first: int, room: int) -> Iterator[Counts]:
        """Yield the fullest fillings of a bar on which one piece ``first`` lies already."""
        widths = [bar.width_um(um) for um in self.lengths_um]

        def fill(place: int, room: int, chosen: Counts) -> Iterator[Counts]:
            self._work += 1
            if self._work > MOST_WORK:
                raise TooManyRestsError(f"more than {MOST_WORK} fillings")
            if place == len(rest):
                if not any(w <= room and have < most for w, have, most in zip(widths, chosen, rest, strict=True)):
                    yield chosen
                return
            on_it = int(place == first)
            able = min(rest[place] - on_it, room // widths[place])
            for count in range(able, -1, -1):
                yield from fill(place + 1, room - count * widths[place], (*chosen, count + on_it))

        return fill(0, room, ())


def _less(have: Counts, number: int) -> Counts:
    return tuple(count - (place == number) for place, count in enumerate(have))


def _more(bars: Counts, number: int) -> Counts:
    return tuple(count + (place == number) for place, count in enumerate(bars))


def _within(a: Counts, b: Counts) -> bool:
    return all(x <= y for x, y in zip(a, b, strict=True))


def _undominated(found: Sequence[Counts]) -> tuple[Counts, ...]:
    kept: list[Counts] = []
    for bars in sorted(set(found), key=lambda bars: (sum(bars), bars)):
        if not any(_within(other, bars) for other in kept):
            kept.append(bars)
    return tuple(kept)
