"""The push by hand that a frame is tested with when it stands: how far it should give way, and what to do with it."""

from __future__ import annotations

from collections.abc import Sequence

from scantling.build.frame_stiffness import (
    UNKNOWN_MPA,
    FrameStiffness,
    Tuning,
    frame_stiffness,
    joint_stiffness,
    known_moduli,
)
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.build.setting import Setting
from scantling.quantities import Figure, show_number

USUAL_PUSH_N = 10.0


def frame_settings(reader: Reader, frame: str) -> tuple[Setting, ...]:
    """Return what a push of 10 N, or that of the frame's first push, should do; nothing where it cannot be reckoned."""
    try:
        found: FrameStiffness = reader.derive(frame_stiffness, frame)
    except NotDescribedError:
        return ()
    push = found.setup.pushes[0]
    force_n = push.force_n.value if push.axis is None else USUAL_PUSH_N
    moved = push_moves(found, known_moduli(reader, frame), reader.derive(joint_stiffness, frame))
    value, low, high = (f"{force_n * end:.3g}" for end in (moved.value, moved.low, moved.high))
    along = "xyz"[[abs(way) for way in push.along].index(1.0)]
    spot = reader.design.frames[frame].pushes[0].spot
    where = f"{spot.on} at {', '.join(spot.at)}" if spot.on is not None else "the point"
    because = (
        f"push with a spring balance or a hung weight along {along} on {where}, read a dial gauge or a card that "
        f"stands on the table; {low} to {high} mm is reckoned. Write what you read into the workshop as pushed: "
        f"[{{frame: {frame}, part: {found.stocks[0].part.id}, force: {show_number(force_n)} N, moved: … mm ± … mm}}]"
    )
    title = f"{reader.design.frames[frame].title or frame}: a push of {show_number(force_n)} N moves it by"
    return (Setting(f"frame.{frame}.push", title, value, "mm", because=because, group="frame"),)


def push_moves(frame: FrameStiffness, moduli: Sequence[Figure | None], joints: Figure) -> Figure:
    """Return how far a newton moves the frame at its first push, in mm, with the band of sheets and joints."""
    ends = ("value", "low", "high")
    value, soft, stiff = (frame.pushed(tuned(frame, moduli, joints, end))[0].moved_mm for end in ends)
    return Figure(value, stiff, soft)


def tuned(frame: FrameStiffness, moduli: Sequence[Figure | None], joints: Figure, end: str) -> Tuning:
    """Return the frame's tuning with sheets and joints all at ``value``, ``low`` or ``high`` of their bands."""
    return Tuning(
        tuple(UNKNOWN_MPA if figure is None else getattr(figure, end) for figure in moduli),
        tuple(getattr(stock.thickness_mm, end) for stock in frame.stocks),
        getattr(joints, end),
    )
