"""Rods that do not lie parallel squeeze their carriage: ball guides bind by being held too often, hardly by friction.

The distance of the rods must be that of the bushings all along the travel, and their direction that of the bushings'
seats. What play does not take up bends the rods, and the bushings carry it. The pull that it costs is added to the
force of the drive.
"""

from __future__ import annotations

from scantling.build.missing import need
from scantling.build.reader import Reader
from scantling.checks.bushing_strength import strength
from scantling.checks.guide_loads import all_guides
from scantling.checks.judging import judge
from scantling.checks.limits import at_most
from scantling.checks.rod_fit import Running, running
from scantling.checks.rule import check_of
from scantling.checks.subjects import ident
from scantling.findings import Finding


def _run(reader: Reader, subject: str) -> Finding:
    name = ident(subject)
    guide = need(reader.design.axes[name].guide, f"axes.{name}.guide")
    need(guide.parallel_mm, f"axes.{name}.guide.parallel")
    on = running(reader, name)
    stands = strength(reader, name, on.bushing)
    floats = " (those of one rod give way)" if guide.seats is not None and guide.seats.floating else ""
    return judge(
        CHECK,
        reader,
        subject,
        rule=lambda **f: pressed_n(on, **f),
        inputs=on.inputs | stands.inputs,
        bounds=at_most(lambda **f: stands.stands_n(f)),
        unit="N",
        because=f"Rods out of parallel by {{parallel}} over {{free}}, {on.on.bearings} bushings{floats} with {{play}} "
        "of play: squeezed by {squeeze}, and by {edge} on its edges, the busiest bushing carries {value} besides its "
        f"load; {{limit}}, {stands.words}. The drive has {{drag}} more to pull.",
        mend="set the rods by sliding the carriage to each end before tightening, let one rod's bushings give way, "
        "take three bushings instead of four, or seats on which the bushings can turn",
        also={
            "squeeze": (lambda **f: on.on.on_bushing_n(f), "N"),
            "edge": (lambda **f: on.edge_n(**{**f, "askew": 0.0}), "N"),
            "drag": (on.drag_n, "N"),
        },
    )


def pressed_n(on: Running, **f: float) -> float:
    """Return what rods out of parallel add to the busiest bushing, with seats that lie true."""
    return on.on.on_bushing_n(f) + on.edge_n(**{**f, "askew": 0.0})


CHECK = check_of(
    _run,
    code="ROD-08",
    title="Parallel rods",
    source="beam tables, springs in series; pressure of a moment: a bushing maker's table; law of bushing life up to "
    "half the rating; linings by pressure and speed: a tribology handbook",
    subjects=all_guides,
)
