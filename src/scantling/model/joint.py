"""Joints: a stack of things held by a fastener."""

from __future__ import annotations

from typing import Any, Literal

from pydantic import model_validator

from scantling.model.base import Count, Data, Expression, Force, Length, Torque, YesNo


class Layer(Data):
    """One thing that the screw passes through, head side first.

    size : a size (``z-bracket.flange``, ``back-panel.thickness``), or
    washer : ``plain`` or ``large``, of the screw's thread, or
    thickness_mm : typed
    """

    size: Expression | None = None
    washer: Literal["plain", "large"] | None = None
    thickness_mm: Length | None = None

    @model_validator(mode="before")
    @classmethod
    def _short(cls, given: Any) -> Any:
        """Accept ``washer``, ``large washer``, ``place.feature`` and the full form."""
        if not isinstance(given, str):
            return given
        if given in ("washer", "plain washer"):
            return {"washer": "plain"}
        if given == "large washer":
            return {"washer": "large"}
        return {"size": given}


class Into(Data):
    """What holds the thread.

    nut : a nut at the far end    place, depth : a tapped hole, an insert or plain material of a place,
    with the size that says how deep the thread is; holds : what the thread is cut in or cuts itself into
    """

    nut: Literal["plain", "lock", "thin"] | None = None
    place: str | None = None
    depth: Expression | None = None
    holds: Literal["metal", "insert", "plastic", "panel", "panel edge"] = "metal"
    blind: YesNo = True

    @model_validator(mode="before")
    @classmethod
    def _short(cls, given: Any) -> Any:
        """Accept ``plain nut``, ``lock nut``, ``thin nut`` and ``z-motor.tapped`` (a blind hole in metal)."""
        if not isinstance(given, str):
            return given
        if given.endswith(" nut") and given.split()[0] in ("plain", "lock", "thin"):
            return {"nut": given.split()[0]}
        place, _, feature = given.partition(".")
        return {"place": place, "depth": given if feature else None}


class Joint(Data):
    """A screw with all it clamps, ``count`` times in one machine.

    screw : head and thread, ``socket head M3``; the length is chosen    through : the stack, head side first
    free_end_mm : how far the screw may stick out; missing means the usual limit
    locking : how it is kept from turning loose    grade : property class of the screw (8.8, A2-70, grade 2); missing
    means the lowest that is sold    tighten_nmm : to what torque; missing means by feel
    aligns : it is loosened to align what it holds    tightened : how often it is done up in its life
    pull_n, slide_n : force on each screw that would open the joint, that would slide it
    """

    id: str = ""
    title: str = ""
    screw: str
    through: tuple[Layer, ...]
    into: Into
    count: Count = 1
    free_end_mm: Length | None = None
    locking: Literal["none", "lock nut", "two nuts", "threadlocker"] = "none"
    shakes: YesNo = False
    grade: str | None = None
    tighten_nmm: Torque | None = None
    aligns: YesNo = False
    tightened: Count | None = None
    pull_n: Force | None = None
    slide_n: Force | None = None
    step: str | None = None
    note: str = ""
