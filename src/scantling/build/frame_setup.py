"""A design's frame as panels, bars, joints and masses in space: what is reckoned, but for the stiffness of its sheets.

Panels count as thin planes where their places put them, so levers are known to half a thickness. Blocks, brackets and
feet count as stiff, and what they stand on as firm; their give is in the band of the joints.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from itertools import pairwise

from scantling.build.frame_bars import bar_section
from scantling.build.frame_panels import PanelStock, SetPanel, disc_at, panel_plate, panel_stock, set_panel
from scantling.build.frame_spots import Grip, grips, purposes_of
from scantling.build.missing import NotDescribedError, each, need
from scantling.build.reader import Reader
from scantling.build.sizes import size
from scantling.build.totals import read_total
from scantling.model.frame import Beam, Frame, FramePanel, Link, Spot
from scantling.quantities import Figure
from scantling.shapes.elements.frame import GROUND, Bar, Model, Panel, Spring, Vector
from scantling.shapes.elements.plate import Plate

FIRM_N_MM = 1e8  # what stands for a firm hold of a bar's end
_ONE_POINT_MM = 1.0
_ALONG = {"x": (1.0, 0.0, 0.0), "y": (0.0, 1.0, 0.0), "z": (0.0, 0.0, 1.0)}
UPRIGHT = ((1.0, 0.0, 0.0), (0.0, 1.0, 0.0), (0.0, 0.0, 1.0))


@dataclass(frozen=True)
class SetPush:
    """A push as it is reckoned; ``acceleration_mm_s2`` and ``axis`` where the force is that of an axis speeding up."""

    title: str
    nodes: tuple[int, ...]
    along: Vector
    force_n: Figure
    limit_mm: Figure | None
    axis: str | None


@dataclass(frozen=True)
class FrameSetup:
    """A frame to be reckoned: panels in the model's order with their plates and stocks."""

    model: Model
    panels: tuple[SetPanel, ...]
    plates: tuple[Plate, ...]
    stocks: tuple[PanelStock, ...]
    pushes: tuple[SetPush, ...]


@dataclass(frozen=True)
class _Held:
    """A grip on one panel of the frame."""

    panel: int
    grip: Grip


def frame_setup(reader: Reader, name: str) -> FrameSetup:
    """Return a frame as it is to be reckoned; raises ``NotDescribedError`` with what is missing."""
    frame = reader.design.frames[name]
    if not frame.pushes:
        raise NotDescribedError((f"frames.{name}.pushes",))
    if not frame.held:
        raise NotDescribedError((f"frames.{name}.held",))
    return _Setting(reader, name, frame).whole()


class _Setting:
    """A frame while it is put together."""

    def __init__(self, reader: Reader, name: str, frame: Frame) -> None:
        self.reader, self.name, self.frame = reader, name, frame
        described = frame.panels or (FramePanel(place=frame.panel),)
        self.panels = each(lambda panel: set_panel(reader, panel), described)
        self.places = tuple(dict.fromkeys(panel.place for panel in self.panels))
        self.stocks = dict(zip(self.places, each(lambda p: panel_stock(reader, p, name), self.places), strict=True))
        self.taken: dict[tuple[str, str], tuple[Grip, ...]] = {}
        self.nodes: list[Vector] = []
        self.springs: list[Spring] = []
        self.bars: list[Bar] = []
        self.at_points: dict[tuple[int, ...], int] = {}

    def whole(self) -> FrameSetup:
        """Take hold of the panels everywhere, then join all that holds."""
        self._take_hold()
        plates = [
            panel_plate(self.reader, stock, [g for (p, _), found in self.taken.items() if p == place for g in found])
            for place, stock in self.stocks.items()
        ]
        self.discs = {place: plate.discs for place, plate in zip(self.places, plates, strict=True)}
        panels = tuple(self._panel(number) for number in range(len(self.panels)))
        self.disc_nodes = [panel.nodes for panel in panels]
        for link in self.frame.links:
            self._link(link)
        for place in self.frame.bars:
            self._through(place)
        for beam in self.frame.beams:
            self._beam(beam)
        for spot in self.frame.held:
            self._hold(spot)
        pushes = tuple(self._push(number) for number in range(len(self.frame.pushes)))
        model = Model(tuple(self.nodes), panels, tuple(self.bars), tuple(self.springs), tuple(self._masses()))
        return FrameSetup(model, tuple(self.panels), tuple(plates), tuple(self.stocks.values()), pushes)

    def _take_hold(self) -> None:
        """Find all grips of all panels, so that every disc is known before a panel is cut into triangles."""
        frame = self.frame
        spots = [*frame.held, *(c.spot for c in frame.carries), *(p.spot for p in frame.pushes)]
        spots += [end for beam in frame.beams for end in (beam.start, beam.end)]
        wanted = [(spot.on, what) for spot in spots if spot.on is not None for what in spot.at]
        for place in self.places:
            for link in frame.links:
                wanted += [(place, what) for what in purposes_of(self.reader, place, link.place)]
            sheet = self.reader.design.sheets.get(place)
            whats = {hole.what for hole in sheet.holes} if sheet is not None else set()
            wanted += [(place, f"{bar}.bore") for bar in frame.bars if f"{bar}.bore" in whats]
        unknown = [on for on, _ in wanted if on not in self.places]
        if unknown:
            raise NotDescribedError(tuple(f"frames.{self.name}.panels ({on})" for on in unknown))
        keys = tuple(dict.fromkeys(wanted))
        found = each(lambda key: grips(self.reader, *key), keys)
        self.taken = dict(zip(keys, found, strict=True))

    def _panel(self, number: int) -> Panel:
        """Give every disc of a panel a node."""
        panel = self.panels[number]
        first = len(self.nodes)
        self.nodes += [panel.point(disc.x_mm, disc.y_mm) for disc in self.discs[panel.place]]
        which = self.places.index(panel.place)
        return Panel(which, tuple(range(first, len(self.nodes))), panel.axes, which)

    def _grips(self, purposes: Sequence[str], place: str | None = None) -> list[_Held]:
        """All grips for some purposes, on all panels or those of a place."""
        return [
            _Held(number, grip)
            for number, panel in enumerate(self.panels)
            if place in (None, panel.place)
            for what in purposes
            for grip in self.taken.get((panel.place, what), ())
        ]

    def _node(self, held: _Held) -> int:
        at = disc_at(self.discs[self.panels[held.panel].place], held.grip)
        assert at is not None
        return self.disc_nodes[held.panel][at]

    def _join(self, held: _Held, other: int) -> None:
        """Screw a panel to another node."""
        panel, node = self.panels[held.panel], self._node(held)
        stock = self.stocks[panel.place]
        self.springs.append(stock.spring(node, other, self.nodes[node], panel.axes, held.grip, stock.usual_mpa))

    def _block(self, group: Sequence[_Held]) -> int:
        """A stiff block that some grips are screwed to: a node in their middle."""
        points = [self.nodes[self._node(held)] for held in group]
        middle = tuple(sum(axis) / len(points) for axis in zip(*points, strict=True))
        self.nodes.append(middle)
        block = len(self.nodes) - 1
        for held in group:
            self._join(held, block)
        return block

    def _link(self, link: Link) -> None:
        """Blocks between panels: grips that are near each other belong to one block."""
        whats = [w for place in self.places for w in purposes_of(self.reader, place, link.place)]
        left = self._grips(tuple(dict.fromkeys(whats)))
        while left:
            group, left = _near([left[0]], left[1:], self._away, link.reach_mm.value)
            if len({held.panel for held in group}) > 1:
                self._block(group)

    def _away(self, a: _Held, b: _Held) -> float:
        return _distance(self.nodes[self._node(a)], self.nodes[self._node(b)])

    def _through(self, place: str) -> None:
        """Rods through holes of several panels that lie in one line, clamped at each."""
        section = bar_section(self.reader, place, self.name)
        lines: dict[tuple[int, ...], list[tuple[float, _Held]]] = {}
        for held in self._grips((f"{place}.bore",)):
            normal, point = self.panels[held.panel].axes[2], self.nodes[self._node(held)]
            sign = 1.0 if next(c for c in normal if abs(c) > 1e-6) > 0 else -1.0
            way = sum(sign * n * p for n, p in zip(normal, point, strict=True))
            foot = [round((p - way * sign * n) / _ONE_POINT_MM) for n, p in zip(normal, point, strict=True)]
            key = (*foot, *(round(1000 * sign * n) for n in normal))
            lines.setdefault(key, []).append((way, held))
        for line in lines.values():
            if len(line) > 1:
                ends = [self._clamp(held) for _, held in sorted(line, key=lambda one: one[0])]
                self.bars += [Bar(a, b, section) for a, b in pairwise(ends)]

    def _clamp(self, held: _Held) -> int:
        self.nodes.append(self.nodes[self._node(held)])
        self._join(held, len(self.nodes) - 1)
        return len(self.nodes) - 1

    def _beam(self, beam: Beam) -> None:
        self.bars.append(
            Bar(self._end(beam.start), self._end(beam.end), bar_section(self.reader, beam.place, self.name))
        )

    def _end(self, spot: Spot) -> int:
        """The node that a bar ends in: a point that others may end in too, or a block screwed to a panel."""
        if spot.point is None:
            return self._block(self._grips(spot.at, spot.on))
        key = self._key(spot)
        if key not in self.at_points:
            self.nodes.append(self._point(spot))
            self.at_points[key] = len(self.nodes) - 1
        return self.at_points[key]

    def _point(self, spot: Spot) -> Vector:
        x, y, z = each(lambda text: self.reader.derive(size, text).value, spot.point or ())
        return (x, y, z)

    def _key(self, spot: Spot) -> tuple[int, ...]:
        return tuple(round(value / _ONE_POINT_MM) for value in self._point(spot))

    def _at(self, spot: Spot) -> tuple[int, ...]:
        """The nodes of a spot."""
        if spot.point is None:
            return tuple(self._node(held) for held in self._grips(spot.at, spot.on))
        found = self.at_points.get(self._key(spot))
        return (need(found, f"frames.{self.name}.beams (one that ends where something is held or pushed)"),)

    def _hold(self, spot: Spot) -> None:
        if spot.point is None:
            for held in self._grips(spot.at, spot.on):
                self._join(held, GROUND)
            return
        node = self._at(spot)[0]
        firm, turning = FIRM_N_MM, FIRM_N_MM * 100
        self.springs.append(Spring(node, GROUND, self.nodes[node], UPRIGHT, firm, firm, turning, turning))

    def _masses(self) -> list[tuple[int, float]]:
        found = []
        for number, carried in enumerate(self.frame.carries):
            mass_kg = carried.mass_kg
            if carried.axis is not None:
                mass_kg = read_total(self.reader, "moving-mass", f"axis {carried.axis}")
            known = need(mass_kg, f"frames.{self.name}.carries.{number}.mass")
            nodes = self._at(carried.spot)
            found += [(node, known.value / 1000 / len(nodes)) for node in nodes]
        return found

    def _push(self, number: int) -> SetPush:
        push, path = self.frame.pushes[number], f"frames.{self.name}.pushes.{number}"
        force_n = push.force_n
        if push.axis is not None:
            needs = self.reader.design.axes[push.axis].needs
            quick = need(needs.acceleration_mm_s2, f"axes.{push.axis}.needs.acceleration")
            mass_kg = read_total(self.reader, "moving-mass", f"axis {push.axis}")
            force_n = mass_kg * quick * Figure.exact(0.001)
        known = need(force_n, f"{path}.force")
        title = push.title or (f"axis {push.axis} speeding up" if push.axis else "push")
        return SetPush(title, self._at(push.spot), _ALONG[push.direction], known, push.sway_limit_mm, push.axis)


def _near(group: list[_Held], others: list[_Held], away: object, reach_mm: float) -> tuple[list[_Held], list[_Held]]:
    """All that hangs together by steps no longer than the reach, and the rest."""
    found = list(group)
    rest = list(others)
    grown = True
    while grown:
        near = [one for one in rest if any(away(one, held) <= reach_mm for held in found)]  # type: ignore[operator]
        rest = [one for one in rest if one not in near]
        found += near
        grown = bool(near)
    return found, rest


def _distance(a: Vector, b: Vector) -> float:
    return float(sum((p - q) ** 2 for p, q in zip(a, b, strict=True)) ** 0.5)
