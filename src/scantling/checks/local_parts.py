"""Which local part may fill a place: the range of each figure of the part there, all checks run with it changed.

All that follows from a figure follows here too: lengths, stacks, holes, masses, chains. The values are actual ones, as
measured, so a tolerance has to lie inside. All else is kept equal for what stays as good as it is; what still may be is
asked with the screws of the joints chosen anew, for another length of screw costs next to nothing.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass, field
from math import inf

from scantling.build.case import Case
from scantling.build.varied import Varied
from scantling.checks.all import CHECKS
from scantling.checks.backwards import Interval, solved
from scantling.checks.local_looks import Look, fails, fails_anew, looks_at, minding
from scantling.checks.part_figures import Figured, figured, words_of
from scantling.findings import Verdict
from scantling.model.build import Build, Key
from scantling.model.part import Part

_OUTSIDE = 1e-3  # so far beyond an end, as a share, it is asked who ends the range

Fails = Callable[[Varied, Look], bool]


@dataclass(frozen=True)
class LocalRange:
    """Where one figure of the part in a place may lie.

    figure : its path in the files, ``parts.ply-6.thickness``    now : its nominal value    checks : that mind it
    sound : intervals in which nothing gets worse, all else equal    below, above : who ends the one that it lies in now
    allowed : intervals in which nothing is worse than marginal, with the screws of the joints chosen anew
    stops_below, stops_above : who ends those
    """

    figure: str
    unit: str
    now: float
    sound: tuple[Interval, ...]
    allowed: tuple[Interval, ...]
    checks: tuple[str, ...]
    below: tuple[str, ...]
    above: tuple[str, ...]
    stops_below: tuple[str, ...]
    stops_above: tuple[str, ...]


@dataclass(frozen=True)
class LocalWord:
    """Which words may stand where one stands now: materials, fits, kinds.

    serve : words with which nothing gets worse, all else equal
    allowed : further ones with which nothing is worse than marginal, with the screws of the joints chosen anew
    against : for each word that does not serve, who minds
    """

    figure: str
    now: str
    serve: tuple[str, ...]
    allowed: tuple[str, ...]
    against: Mapping[str, tuple[str, ...]] = field(default_factory=dict)


@dataclass(frozen=True)
class Local:
    """What a local part must be like to fill ``place`` in the stead of ``part``.

    checks : code and subject of those that look at it    left_out : codes of those that take too long to be asked
    """

    place: str
    part: str
    ranges: tuple[LocalRange, ...]
    words: tuple[LocalWord, ...]
    checks: tuple[str, ...]
    left_out: tuple[str, ...]


def local_part(case: Case, build: Build, place: str) -> Local | None:
    """Return the ranges of the part that fills a place; None where it is empty or filled by a standard fastener."""
    part = case.reader(build).part(place)
    if part is None or part.id not in case.project.design.parts:
        return None
    trier = _Trier(case, build.as_dict(), part)
    ranges = tuple(found for one in figured(part) if (found := trier.range_of(one)) is not None)
    words = tuple(word for text in words_of(part) if (word := trier.words_of(*text)) is not None)
    left_out = tuple(check.code for check in CHECKS if check.costly)
    return Local(place, part.id, ranges, words, tuple(look.label for look in trier.looks), left_out)


class _Trier:
    """All checks in which one part has a say, to be tried with that part changed."""

    def __init__(self, case: Case, answers: Mapping[Key, str], part: Part) -> None:
        self.case, self.answers, self.part = case, answers, part
        self.looks = looks_at(case, answers, part.id)

    def range_of(self, one: Figured) -> LocalRange | None:
        """Return the range of a figure; None where no check minds it."""
        looks = minding(self.case, self.answers, self.looks, one)
        as_it_is, anew = fails(self.answers), fails_anew(self.case, self.answers, looks)
        sound = self._where(one, looks, as_it_is)
        if sound == (Interval(-inf, inf),):
            return None
        allowed = self._where(one, looks, anew)
        return LocalRange(
            f"parts.{self.part.id}.{one.name}",
            one.unit,
            one.now,
            sound,
            allowed,
            tuple(look.label for look in looks),
            *self._who(one, looks, sound, as_it_is),
            *self._who(one, looks, allowed, anew),
        )

    def words_of(self, name: str, now: str, put: Mapping[str, Part]) -> LocalWord | None:
        """Return which words serve; None where no check minds the word."""
        others = {word: part for word, part in put.items() if word != now}
        found = {word: self._against(part, self.looks, fails(self.answers)) for word, part in others.items()}
        against = {word: who for word, who in found.items() if who}
        anew = fails_anew(self.case, self.answers, self.looks)
        allowed = tuple(word for word in against if not self._against(others[word], self.looks, anew))
        serve = tuple(word for word in put if word not in against)
        return LocalWord(f"parts.{self.part.id}.{name}", now, serve, allowed, against) if against else None

    def _where(self, one: Figured, looks: Sequence[Look], failing: Fails) -> tuple[Interval, ...]:
        """Return the intervals in which no look fails; the one that failed last is asked first."""
        order = list(looks)

        def rank_at(value: float) -> int:
            varied = self._with(one, value)
            if varied is None:
                return Verdict.UNSOUND.rank
            for place, look in enumerate(order):
                if failing(varied, look):
                    order.insert(0, order.pop(place))
                    return Verdict.UNSOUND.rank
            return Verdict.SOUND.rank

        return solved(rank_at, one.now, Verdict.SOUND, whole=one.whole).intervals

    def _who(
        self, one: Figured, looks: Sequence[Look], intervals: Sequence[Interval], failing: Fails
    ) -> tuple[tuple[str, ...], tuple[str, ...]]:
        """Return who ends the interval that holds the present value, below and above."""
        here = next((interval for interval in intervals if interval.holds(one.now)), Interval(one.now, one.now))
        ends = []
        for end, way in ((here.low, -1), (here.high, 1)):
            beyond = end + way * (1.0 if one.whole else _OUTSIDE * abs(end or 1.0))
            varied = self._with(one, beyond) if abs(end) < inf else None
            ends.append(() if varied is None else tuple(look.label for look in looks if failing(varied, look)))
        return ends[0], ends[1]

    def _against(self, part: Part, looks: Sequence[Look], failing: Fails) -> tuple[str, ...]:
        varied = Varied(self.case, self.answers, part)
        return tuple(look.label for look in looks if failing(varied, look))

    def _with(self, one: Figured, value: float) -> Varied | None:
        """Return the case with a figure changed; None where such a part cannot be."""
        try:
            return Varied(self.case, self.answers, one.put(value))
        except ValueError:
            return None
