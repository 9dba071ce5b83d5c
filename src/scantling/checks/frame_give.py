"""How far a frame gives way under the forces of its axes and a push by hand: panels as plates, rods as bars.

Bolted joints in wood and the modulus of the sheet are known to a factor; so both have their band, the share of the
joints is shown, and the setting-up sheet asks for a push by hand that replaces the guess.
"""

from __future__ import annotations

from scantling.build.frame_setup import SetPush
from scantling.build.reader import Reader
from scantling.checks.frame_inputs import Asked, asked_frame
from scantling.checks.inputs import known
from scantling.checks.judging import judge, worst_of
from scantling.checks.limits import INFORMATION, at_most
from scantling.checks.rule import check_of
from scantling.checks.subjects import all_of, ident
from scantling.checks.trials import Rule
from scantling.findings import Finding

_PERCENT = 100.0


def _run(reader: Reader, subject: str) -> Finding:
    asked = asked_frame(reader, ident(subject))
    pushes = asked.frame.setup.pushes
    return worst_of([_pushed(reader, subject, asked, number) for number in range(len(pushes))])


def _pushed(reader: Reader, subject: str, asked: Asked, number: int) -> Finding:
    """The finding of one push."""
    push = asked.frame.setup.pushes[number]

    def moved(**figures: float) -> float:
        return asked.frame.pushed(asked.tuning(figures))[number].moved_mm * figures["force"]

    def share(part: str) -> Rule:
        return lambda **figures: _PERCENT * getattr(asked.frame.pushed(asked.tuning(figures))[number], f"{part}_ratio")

    def mesh(**figures: float) -> float:
        return _PERCENT * asked.frame.mesh_ratio(asked.tuning(figures), number)

    shares = {part: (share(part), "%") for part in ("panels", "bars", "joints")}
    return judge(
        CHECK,
        reader,
        subject,
        rule=moved,
        inputs={**asked.inputs, "force": known(push.title, push.force_n, "N")},
        bounds=INFORMATION if push.limit_mm is None else at_most(push.limit_mm.value),
        unit="mm",
        because=f"{_cap(push.title)}, {{force}} along {_axis(push)}: it gives way there by {{value}}"
        + ("" if push.limit_mm is None else "; {limit}")
        + f". Of {asked.words}, joints at {{joints}} of what is reckoned. Panels give {{of_panels}} of it, bars "
        "{of_bars}, joints {of_joints}; triangles of half the size change it by {mesh}.",
        mend="a thicker or stiffer sheet, larger gussets, more screws or larger washers where the joints give most; "
        "push and measure before you spend",
        also={**{f"of_{part}": shown for part, shown in shares.items()}, "mesh": (mesh, "%")},
    )


def _axis(push: SetPush) -> str:
    return "xyz"[[abs(way) for way in push.along].index(1.0)]


def _cap(text: str) -> str:
    return text[:1].upper() + text[1:]


CHECK = check_of(
    _run,
    code="FRAME-02",
    title="Give of the frame under its forces",
    source="plate finite elements (discrete Kirchhoff triangles), EN 1995-1-1 slip moduli; band of joints: from memory",
    subjects=all_of("frame", lambda design: design.frames),
    costly=True,
)
