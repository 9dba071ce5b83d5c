"""The sheets that a frame may be made of, side by side: how far it gives, how fast it swings, what weighs and costs."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from fractions import Fraction

from scantling.build.case import Case
from scantling.build.frame_settings import tuned
from scantling.build.frame_stiffness import FrameStiffness, frame_stiffness, joint_stiffness, known_moduli, mass_by_part
from scantling.build.missing import NotDescribedError
from scantling.build.reader import Reader
from scantling.build.reference import carry_over
from scantling.checks.all import CHECKS, run_check
from scantling.findings import Finding, Verdict, worst
from scantling.model.build import Build
from scantling.model.part import Part
from scantling.quantities import Figure, minor_digits, parse_money

ENDS = ("value", "low", "high")


@dataclass(frozen=True)
class FrameRow:
    """One sheet as the frame's material, all else kept.

    gives_mm : under each push, its band with soft and stiff sheets and joints    swings_hz : first ways of swinging
    shares : of the first push's give in panels, bars and joints    mesh_ratio : what half the triangles' size changes
    price : per area of the cheapest board on offer, "" where nobody offers it    lacking : why it could not be reckoned
    """

    part: str
    name: str
    thickness_mm: float
    mass_kg: float
    gives_mm: tuple[Figure, ...]
    swings_hz: tuple[Figure, ...]
    shares: tuple[float, float, float]
    mesh_ratio: float
    verdict: Verdict
    against: tuple[str, ...]
    price: str
    in_force: bool
    lacking: str = ""


@dataclass(frozen=True)
class FrameTable:
    """All sheets of a frame, the stiffest first.

    pushes : what pushes it, in words    limits_mm : how far each may move it, None where nothing is said
    """

    frame: str
    title: str
    pushes: tuple[str, ...]
    limits_mm: tuple[float | None, ...]
    rows: tuple[FrameRow, ...]


def frame_table(case: Case, build: Build, name: str, tell: Callable[[int, int, str], None] | None = None) -> FrameTable:
    """Return how a frame would be of every sheet that its judged panel may be of; what must change with it does.

    tell : told which sheet is being reckoned
    """
    frame = case.project.design.frames[name]
    key = case.part_key(frame.panel)
    parts = [part for part in case.answers(key, build.as_dict()) if part]
    rows = []
    for number, part in enumerate(parts):
        if tell is not None:
            tell(number, len(parts), f"reckoning {part}")
        reader = case.reader(carry_over(case, build, {key: part}))
        rows.append(_row(reader, name, case.part(part), in_force=build.as_dict()[key] == part))
    rows.sort(key=lambda row: (bool(row.lacking), row.gives_mm[0].value if row.gives_mm else 0.0, row.part))
    pushes, limits = _pushes(case.reader(build), name)
    return FrameTable(name, frame.title or name, pushes, limits, tuple(rows))


def _pushes(reader: Reader, name: str) -> tuple[tuple[str, ...], tuple[float | None, ...]]:
    try:
        found = reader.derive(frame_stiffness, name).setup.pushes
    except NotDescribedError:
        return (), ()
    words = tuple(f"{push.title}, {push.force_n.value:.3g} N" for push in found)
    return words, tuple(None if push.limit_mm is None else push.limit_mm.value for push in found)


def _row(reader: Reader, name: str, part: Part, in_force: bool) -> FrameRow:
    price = _price(reader, part.id)
    try:
        frame: FrameStiffness = reader.derive(frame_stiffness, name)
        joints = reader.derive(joint_stiffness, name)
    except NotDescribedError as error:
        lacking = ", ".join(error.needs)
        return FrameRow(
            part.id,
            part.name or part.id,
            0.0,
            0.0,
            (),
            (),
            (0, 0, 0),
            0.0,
            Verdict.UNKNOWN,
            (),
            price,
            in_force,
            lacking,
        )
    moduli = known_moduli(reader, name)
    tunings = {end: tuned(frame, moduli, joints, end) for end in ENDS}
    pushed = {end: frame.pushed(tuning) for end, tuning in tunings.items()}
    modes = {end: frame.modes(tuning) for end, tuning in tunings.items()}
    stock = next(stock for stock in frame.stocks if stock.part.id == part.id)
    first = pushed["value"][0]
    said = [word for check in CHECKS if check.code.startswith("FRAME-") for word in run_check(check, reader)]
    findings = [word for word in said if isinstance(word, Finding) and word.subject == f"frame {name}"]
    return FrameRow(
        part=part.id,
        name=part.name or part.id,
        thickness_mm=stock.thickness_mm.value,
        mass_kg=sum(mass_by_part(frame).values()),
        gives_mm=tuple(
            _banded(*(pushed[end][k].moved_mm * push.force_n.value for end in ENDS))
            for k, push in enumerate(frame.setup.pushes)
        ),
        swings_hz=tuple(_banded(*(modes[end][k].frequency_hz for end in ENDS)) for k in range(len(modes["value"]))),
        shares=(first.panels_ratio, first.bars_ratio, first.joints_ratio),
        mesh_ratio=frame.mesh_ratio(tunings["value"], 0),
        verdict=worst([finding.verdict for finding in findings]),
        against=tuple(finding.code for finding in findings if not finding.admissible),
        price=price,
        in_force=in_force,
    )


def _banded(value: float, one: float, other: float) -> Figure:
    return Figure(value, min(one, other, value), max(one, other, value))


def _price(reader: Reader, part: str) -> str:
    """The cheapest board of a part by its area, in the workshop's own currency where it is offered in that."""
    shop = reader.workshop
    found = []
    for offer in shop.offers:
        vendor = shop.vendors.get(offer.vendor)
        currency = (vendor.currency if vendor is not None else None) or shop.currency
        if offer.part == part and offer.board_width_mm is not None and offer.board_depth_mm is not None:
            area_m2 = offer.pack * offer.board_width_mm.value * offer.board_depth_mm.value * 1e-6
            price = float(Fraction(parse_money(offer.price, currency).minor, 10 ** minor_digits(currency)))
            found.append((currency != shop.currency, price / area_m2, currency))
    if not found:
        return ""
    _, price, currency = min(found)
    return f"{price:.1f} {currency}/m²"
