"""How fast a frame swings by itself, and where: panels as plates, rods as bars, with what it carries."""

from __future__ import annotations

from scantling.build.reader import Reader
from scantling.checks.frame_inputs import Asked, asked_frame
from scantling.checks.judging import judge
from scantling.checks.limits import INFORMATION
from scantling.checks.rule import check_of
from scantling.checks.subjects import all_of, ident
from scantling.checks.trials import Rule
from scantling.findings import Finding

_WAYS = ("sideways along x", "to and fro along y", "up and down")


def _run(reader: Reader, subject: str) -> Finding:
    asked = asked_frame(reader, ident(subject))

    def first(**figures: float) -> float:
        return asked.frame.modes(asked.tuning(figures))[0].frequency_hz

    def later(number: int) -> Rule:
        def frequency(**figures: float) -> float:
            modes = asked.frame.modes(asked.tuning(figures))
            return modes[min(number, len(modes) - 1)].frequency_hz

        return frequency

    def mesh(**figures: float) -> float:
        tuning = asked.tuning(figures)
        return 100 * abs(first(**figures) / asked.frame.modes(tuning, True)[0].frequency_hz - 1)

    def weight(**figures: float) -> float:
        return asked.frame.modes(asked.tuning(figures))[0].mass_kg

    return judge(
        CHECK,
        reader,
        subject,
        rule=first,
        inputs=asked.inputs,
        bounds=INFORMATION,
        unit="Hz",
        because=f"Of {asked.words}, joints at {{joints}} of what is reckoned, it swings at {{value}}, {_where(asked)}, "
        "with {weight} going along; then at {second} and {third}. Triangles of half the size change the first by "
        "{mesh}.",
        also={
            "weight": (weight, "kg"),
            "second": (later(1), "Hz"),
            "third": (later(2), "Hz"),
            "mesh": (mesh, "%"),
        },
    )


def _where(asked: Asked) -> str:
    """What moves most in the first way of swinging, and along which axis of the machine."""
    setup = asked.frame.setup
    ratio = asked.inputs["joints"].nominal / 100
    shape = asked.frame.modes(asked.frame.usual(ratio))[0].shape
    steps = [abs(step) for node in range(len(setup.model.nodes)) for step in shape[6 * node : 6 * node + 3]]
    node, way = divmod(steps.index(max(steps)), 3)
    for panel, described in zip(setup.model.panels, setup.panels, strict=True):
        if node in panel.nodes:
            return f"{described.place} {_WAYS[way]}"
    return _WAYS[way]


CHECK = check_of(
    _run,
    code="FRAME-03",
    title="First natural frequencies of the frame",
    source="plate finite elements (discrete Kirchhoff triangles), component modes after Craig and Bampton",
    subjects=all_of("frame", lambda design: design.frames),
    costly=True,
    informs=True,
)
