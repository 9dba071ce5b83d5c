"""The design: all that every follower shares."""

from __future__ import annotations

from typing import Any, Literal

from pydantic import Field, model_validator

from scantling.errors import QuantityError
from scantling.model.axis import Axis
from scantling.model.base import (
    Area,
    Count,
    Data,
    Expression,
    HeatLoss,
    Length,
    LengthOrShare,
    Power,
    Ratio,
    Temperature,
    Time,
    Tolerance,
    Voltage,
    Warmth,
    YesNo,
)
from scantling.model.frame import Frame
from scantling.model.joint import Joint
from scantling.model.kinds import AnyPart
from scantling.model.place import Place
from scantling.model.reach import Clearance
from scantling.model.sheet import Sheet
from scantling.model.wiring import Electronics, LoomWire
from scantling.model.zone import Zone


class Machine(Data):
    """What the machine is."""

    name: str
    revision: str = "1"
    licence: str = ""
    invented: YesNo = False
    about: str = ""


class Mate(Data):
    """Two features that must go together: ``y-motor.shaft`` in ``y-pulley.bore``.

    kind : what the pair must obey    fit : what a shaft in a bore must be
    """

    id: str = ""
    kind: Literal["shaft in bore", "rod in bearing", "thread in nut", "belt on pulley", "face on pattern"]
    a: str
    b: str
    fit: Literal["slides", "locates", "press", "clamped"] = "slides"


class ChainTerm(Data):
    """One size in a dimension chain.

    size : an expression    sign : + or -
    tolerance_mm : ± or both deviations; where missing, of the size itself or of the way it is got
    spread : how sizes lie within it: normal, even, or cut off (what is beyond is sorted out)
    samples_mm : sizes that were read on pieces, instead of a tolerance
    together : name of a group made in one go ("drilled together"), whose deviations are equal
    common : by name of a cause shared with other sizes ("seam", "scale of the template"), how much it makes, ± in mm or
        in per cent of the size
    made_of : the place whose part's material grows with heat, where the size itself does not name it
    warmer_k : how much warmer it gets, where not as much as the chain
    """

    size: Expression
    sign: Literal["+", "-"] = "+"
    tolerance_mm: Tolerance | None = None
    spread: Literal["normal", "even", "cut off"] = "normal"
    samples_mm: tuple[Length, ...] = ()
    together: str | None = None
    common: dict[str, LengthOrShare] = Field(default_factory=dict)
    made_of: str | None = None
    warmer_k: Warmth | None = None

    @model_validator(mode="before")
    @classmethod
    def _short(cls, given: Any) -> Any:
        """Accept ``+ back-panel.thickness``, ``- rod.length`` and ``rod.length``."""
        if not isinstance(given, str):
            return given
        sign = given[:1] if given[:1] in ("+", "-") else ""
        return {"sign": sign or "+", "size": given.removeprefix(sign).strip()}


class Chain(Data):
    """Sizes and tolerances that add up to a gap or a distance that matters."""

    id: str = ""
    title: str = ""
    terms: tuple[ChainTerm, ...]
    at_least_mm: Length | None = None
    at_most_mm: Length | None = None
    yield_wanted: Ratio | None = None
    warmer_k: Warmth | None = None


class RailLoad(Data):
    """One consumer on a rail: a place whose part draws power, or a typed power.

    duty : share of the time that it is on: counts for heat and energy, not for what the supply must give at once
    at_once : share of it that can be on together with all the rest
    """

    place: str | None = None
    power_w: Power | None = None
    what: str = Field(default="", alias="for")
    duty: Ratio | None = None
    at_once: Ratio | None = None


class Rail(Data):
    """A supply with what it feeds; ``headroom`` is the share of the sum kept in reserve.

    inlet, mains_fuse : places between the mains and the supply
    """

    id: str = ""
    supply: str
    voltage_v: Voltage
    loads: tuple[RailLoad, ...]
    headroom: Ratio | None = None
    inlet: str | None = None
    mains_fuse: str | None = None


class Warming(Data):
    """A thing to heat: the places whose heat store counts, the loss, the wanted temperature and time.

    face_mm2 : of each of the two faces, for the loss where it is not given    insulation : the place of what covers one
    near : places that must stand what a switch stuck on leads to    cut_out : the place of a thermal cut-out
    """

    id: str = ""
    title: str = ""
    heater: str
    stores: tuple[str, ...]
    loss_w_k: HeatLoss | None = None
    face_mm2: Area | None = None
    insulation: str | None = None
    near: tuple[str, ...] = ()
    cut_out: str | None = None
    room_c: Temperature
    target_c: Temperature
    within_s: Time


def _all_of(names: list[str]) -> dict[str, str]:
    """All pieces of each; a name that stands twice may have been meant as two pieces."""
    for name in names:
        if names.count(name) > 1:
            raise QuantityError(f"{name!r} stands twice", f"write it once for all pieces, or a count: {{{name}: 2}}")
    return dict.fromkeys(names, "all")


class Step(Data):
    """One step of the assembly.

    uses : places with the count of pieces, or ``all``    joints : done up here, with a count where not all
    after : steps that must come first    uses_results : sub-assemblies of earlier steps    yields : one it makes
    """

    id: str = ""
    title: str
    uses: dict[str, str] = Field(default_factory=dict)
    joints: dict[str, str] = Field(default_factory=dict)
    after: tuple[str, ...] = ()
    yields: str | None = None
    uses_results: tuple[str, ...] = ()
    tools: tuple[str, ...] = ()
    minutes: Count | None = None
    text: str = ""
    check: str = ""
    loose: str = ""
    caution: str = ""

    @model_validator(mode="before")
    @classmethod
    def _lists(cls, given: Any) -> Any:
        """Accept ``uses: [bed, y-rod]`` for all pieces of each."""
        if isinstance(given, dict):
            given = dict(given)
            for key in ("uses", "joints"):
                names = given.get(key)
                if isinstance(names, list) and all(isinstance(name, str) for name in names):
                    given[key] = _all_of(names)
        return given


class Setting(Data):
    """A value to enter or a test to pass that the maker adds to those which follow from the parts."""

    title: str
    value: Expression | None = None
    text: str = ""


class Accepted(Data):
    """A finding that the design lives with, and why: an unknown that is accepted, a limit that is overridden."""

    code: str
    subject: str
    because: str
    limit: str | None = None


class Design(Data):
    """A whole design; each section is keyed by identifier."""

    format: Literal["1"] = "1"
    machine: Machine
    parts: dict[str, AnyPart] = Field(default_factory=dict)
    places: dict[str, Place] = Field(default_factory=dict)
    sizes: dict[str, Expression] = Field(default_factory=dict)
    mates: dict[str, Mate] = Field(default_factory=dict)
    axes: dict[str, Axis] = Field(default_factory=dict)
    chains: dict[str, Chain] = Field(default_factory=dict)
    joints: dict[str, Joint] = Field(default_factory=dict)
    sheets: dict[str, Sheet] = Field(default_factory=dict)
    rails: dict[str, Rail] = Field(default_factory=dict)
    warmings: dict[str, Warming] = Field(default_factory=dict)
    zones: dict[str, Zone] = Field(default_factory=dict)
    loom: dict[str, LoomWire] = Field(default_factory=dict)
    electronics: dict[str, Electronics] = Field(default_factory=dict)
    frames: dict[str, Frame] = Field(default_factory=dict)
    clearances: dict[str, Clearance] = Field(default_factory=dict)
    steps: dict[str, Step] = Field(default_factory=dict)
    settings: dict[str, Setting] = Field(default_factory=dict)
    accepted: tuple[Accepted, ...] = ()
