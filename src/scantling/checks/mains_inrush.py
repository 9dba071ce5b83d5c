"""Inrush: the first half wave into a cold supply must not melt the mains fuse, nor tire it over ten thousand times.

A fuse bears a pulse of so much of its melting integral, the square of the current times its time. A quick fuse of the
right rating blows at the first evening; that is what time-lag ones are for.
"""

from __future__ import annotations

from scantling.build.missing import NotDescribedError, need
from scantling.build.reader import Reader
from scantling.checks.inputs import Input, known, or_typical
from scantling.checks.judging import judge
from scantling.checks.limits import at_most
from scantling.checks.mains_fuse import mains_rails
from scantling.checks.rule import check_of, part_at
from scantling.checks.subjects import ident
from scantling.findings import Finding
from scantling.formulas.power import pulse_integral_a2s, time_lag_melting_a2s
from scantling.model.kinds import Fuse, Supply
from scantling.tables.electric_limits import electric_limit

PERCENT = 100.0


def _run(reader: Reader, subject: str) -> Finding:
    name = ident(subject)
    rail = reader.design.rails[name]
    supply = part_at(reader, rail.supply, Supply, f"rails.{name}.supply")
    fuse = part_at(reader, rail.mains_fuse, Fuse, f"rails.{name}.mains-fuse")
    peak = need(supply.inrush_a, f"parts.{supply.id}.inrush")
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda peak, decay, melting: PERCENT * pulse_integral_a2s(peak, decay) / melting,
        inputs={
            "peak": known(f"inrush of {supply.id}", peak, "A"),
            "decay": or_typical("decay of the first peak", None, electric_limit("inrush decay"), "s"),
            "melting": _melting(fuse),
        },
        bounds=at_most(electric_limit("pulse of a mains fuse").value),
        unit="%",
        because="A first peak of {peak} that dies away in {decay} leaves {pulse} in the fuse, {value} of the {melting} "
        "that melt it; {limit}.",
        also={"pulse": (lambda peak, decay, **_: pulse_integral_a2s(peak, decay), "A²s")},
        mend="a time-lag fuse, the next larger one, or a supply with less inrush",
    )


def _melting(fuse: Fuse) -> Input:
    what = f"melting integral of {fuse.id}"
    if fuse.melting_a2s is not None:
        return known(what, fuse.melting_a2s, "A²s")
    if fuse.speed == "quick":
        raise NotDescribedError((f"parts.{fuse.id}.melting",))
    least = time_lag_melting_a2s(fuse.current_a.value)
    return Input(what, least, least, 2 * least, "A²s", assumed=True)


CHECK = check_of(
    _run,
    code="RAIL-04",
    title="Inrush against the mains fuse",
    source="I² τ / 2 against the melting integral, 29 % of it for 10 000 pulses: a published guide to fuses",
    subjects=mains_rails,
)
