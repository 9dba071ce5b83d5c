"""Compare the sheets that a frame may be made of: a table, and a picture of how it swings."""

from __future__ import annotations

from collections.abc import Mapping

from scantling.api.opening import Session, start_build
from scantling.api.telling import Tell
from scantling.build.reference import carry_over
from scantling.errors import Fault, FaultsError, Where, nearest
from scantling.model.build import Build, Key
from scantling.plans.frame_figure import frame_picture
from scantling.plans.frame_rows import FrameRow as FrameRow  # faces name its type
from scantling.plans.frame_rows import FrameTable as FrameTable
from scantling.plans.frame_rows import frame_table


def compare_frame(
    session: Session, name: str | None = None, changes: Mapping[Key, str] | None = None, tell: Tell | None = None
) -> FrameTable:
    """Return how a frame would be of every sheet on offer, the choice in force (with some changes) kept else.

    name : of the frame; needed where a design has several. Raises ``FaultsError`` where there is none such.
    """
    return frame_table(session.case, _build(session, changes), _named(session, name), tell)


def draw_frames(session: Session, table: FrameTable, changes: Mapping[Key, str] | None = None) -> bytes:
    """Return the picture of a comparison as SVG: the first way of swinging on the outlines, and the give as bars."""
    return frame_picture(session.case, _build(session, changes), table)


def _build(session: Session, changes: Mapping[Key, str] | None) -> Build:
    build = start_build(session)
    return carry_over(session.case, build, changes) if changes else build


def _named(session: Session, name: str | None) -> str:
    frames = session.case.project.design.frames
    if name is None and len(frames) == 1:
        return next(iter(frames))
    if name in frames:
        return str(name)
    what = "the design describes no frame" if not frames else f"no frame called {name!r}" if name else "which frame?"
    mend = nearest(name or "", frames) if frames else "describe one under frames: see how-to/compare-materials"
    raise FaultsError([Fault("ASK-05", what, mend, Where(name or "frames"))])
