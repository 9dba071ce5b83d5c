"""The explicit list of totals, and how a check reads one.

A total's value is the sum of its rounded contributions, so that a table grown on a trial sum and a check of a full
build see exactly the same number. Its band is the same for every build: that of the fixed share, and for each place the
widest of its options, all other places being as the design's reference has them.
"""

from __future__ import annotations

from scantling.build.masses import MOVING_MASS
from scantling.build.missing import NotDescribedError
from scantling.build.rails import RAIL_POWER
from scantling.build.reader import Catalogue, Reader
from scantling.model.build import Key
from scantling.quantities import Figure, Grade

TOTALS = {total.name: total for total in (MOVING_MASS, RAIL_POWER)}


def read_total(reader: Reader, name: str, subject: str) -> Figure:
    """Return a total, with a band that does not depend on the build; under a trial value while a table is grown.

    Only a check itself may ask, never a derived value. Raises ``NotDescribedError`` where a place contributes that none
    of whose options says how much, ``MissingFigureError`` where only the chosen part does not say it.
    """
    needs = total_needs(reader.case, name, subject)
    if needs:
        raise NotDescribedError(needs)
    trial = reader.trial(name)
    if trial is not None:
        return with_fixed(reader.case, name, subject, trial)
    total = TOTALS[name]
    units = sum(reader.derive(term_units, name, subject, place) for place in total.terms(reader.design, subject))
    return with_fixed(reader.case, name, subject, units / total.scale)


def term_units(reader: Reader, name: str, subject: str, place: str) -> int:
    """Return one place's contribution in whole units; raises ``MissingFigureError`` where its part does not say it."""
    total = TOTALS[name]
    return round(total.contribution(reader, subject, place).value * total.scale)


def with_fixed(case: Catalogue, name: str, subject: str, variable: float) -> Figure:
    """Return the total for a given sum of its places' contributions."""
    fixed = case.once(_fixed, name, subject)
    return Figure(variable + fixed.value, variable + fixed.low, variable + fixed.high, fixed.grade)


def total_needs(case: Catalogue, name: str, subject: str) -> tuple[str, ...]:
    """Return the facts without which no build has this total: of places none of whose options contributes a figure."""
    return case.once(_needs, name, subject)


def _needs(case: Catalogue, name: str, subject: str) -> tuple[str, ...]:
    needs: list[str] = []
    for place in TOTALS[name].terms(case.project.design, subject):
        of_options = [_in_reference(case, name, subject, place, part) for part in _parts(case, place)]
        missing = [one.needs for one in of_options if isinstance(one, NotDescribedError)]
        if of_options and len(missing) == len(of_options):
            needs += missing[0]
    return tuple(dict.fromkeys(needs))


def _fixed(case: Catalogue, name: str, subject: str) -> Figure:
    """The fixed share, its band widened by the widest of each place's options."""
    fixed = TOTALS[name].fixed(case, subject)
    for place in TOTALS[name].terms(case.project.design, subject):
        figures = [_in_reference(case, name, subject, place, part) for part in _parts(case, place)]
        known = [figure for figure in figures if isinstance(figure, Figure)]
        below = max((figure.value - figure.low for figure in known), default=0.0)
        above = max((figure.high - figure.value for figure in known), default=0.0)
        usual = any(figure.grade is Grade.TYPICAL for figure in known)
        fixed = fixed + Figure(0.0, -below, above, Grade.TYPICAL if usual else Grade.GIVEN)
    return fixed


def _parts(case: Catalogue, place: str) -> tuple[str, ...]:
    return tuple(option.part for option in case.project.design.places[place].options)


def _in_reference(case: Catalogue, name: str, subject: str, place: str, part: str) -> Figure | NotDescribedError:
    """What a part contributes in a place, got as liked best, all other places filled as the reference has them."""
    answers = {
        **case.once(_reference_answers),
        case.part_key(place): part,
        Key("get", place): case.gets(place, part)[0],
    }
    try:
        return TOTALS[name].contribution(Reader(case, answers), subject, place)
    except NotDescribedError as error:
        return error


def _reference_answers(case: Catalogue) -> dict[Key, str]:
    """The reference part of every place, and the way liked best of getting it."""
    answers: dict[Key, str] = {}
    for place, described in case.project.design.places.items():
        part = answers.setdefault(case.part_key(place), described.reference.part)
        answers[Key("get", place)] = case.gets(place, part)[0]
    return answers
