"""The explicit list of totals, and how a check reads one.

A total's value is the sum of its rounded contributions, so that a table grown on a trial sum and a check of a full
build see exactly the same number.
"""

from __future__ import annotations

from scantling.build.masses import MOVING_MASS
from scantling.build.rails import RAIL_POWER
from scantling.build.reader import Catalogue, Reader
from scantling.quantities import Figure

TOTALS = {total.name: total for total in (MOVING_MASS, RAIL_POWER)}


def read_total(reader: Reader, name: str, subject: str) -> Figure:
    """Return a total, with the band of its fixed share; under a trial value while a table is grown.

    Only a check itself may ask, never a derived value.
    """
    trial = reader.trial(name)
    if trial is not None:
        return with_fixed(reader.case, name, subject, trial)
    total = TOTALS[name]
    units = sum(reader.derive(term_units, name, subject, place) for place in total.terms(reader.design, subject))
    return with_fixed(reader.case, name, subject, units / total.scale)


def term_units(reader: Reader, name: str, subject: str, place: str) -> int:
    """Return one place's contribution in whole units."""
    total = TOTALS[name]
    return round(total.contribution(reader, subject, place) * total.scale)


def with_fixed(case: Catalogue, name: str, subject: str, variable: float) -> Figure:
    """Return the total for a given sum of its places' contributions."""
    return TOTALS[name].fixed(case, subject) + Figure.exact(variable)
