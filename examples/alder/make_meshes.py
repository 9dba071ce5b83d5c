"""Makes the meshes of the printed parts anew: ``python make_meshes.py`` beside this file.

Plain shapes, in millimetres, as they stand on the print bed: walls where screws pass, seats for rods and bushings,
holes for inserts. Some are STL, some 3MF; the same bytes come out every time. Holes for screws are drawn 0.2 mm wider
than they shall become, seats of rods 0.1 mm.
"""

from __future__ import annotations

import struct
import zipfile
from collections.abc import Callable, Sequence
from pathlib import Path

from manifold3d import Manifold

HERE = Path(__file__).parent / "meshes"
Point = tuple[float, float, float]
M2_5, M3, M4, M5, M8 = 3.1, 3.6, 4.7, 5.7, 9.2  # holes for screws as drawn
INSERT = 4.2  # for an insert M3
SIDES = 24


def box(width: float, depth: float, height: float, at: Point = (0, 0, 0)) -> Manifold:
    """Return a block with its least corner at a point."""
    return Manifold.cube((width, depth, height)).translate(at)


def rod(diameter: float, length: float, at: Point, along: str) -> Manifold:
    """Return a cylinder that begins at a point and runs along an axis."""
    turn = {"x": (0, 90, 0), "y": (-90, 0, 0), "z": (0, 0, 0)}[along]
    return Manifold.cylinder(length, diameter / 2, circular_segments=SIDES).rotate(turn).translate(at)


def nut_pocket(across_flats: float, depth: float, at: Point, along: str) -> Manifold:
    """Return a hexagon for a nut, 0.2 mm wide."""
    turn = {"x": (0, 90, 0), "y": (-90, 0, 0), "z": (0, 0, 0)}[along]
    radius = (across_flats + 0.2) / 3**0.5
    return Manifold.cylinder(depth, radius, circular_segments=6).rotate(turn).translate(at)


def less(solid: Manifold, *holes: Manifold) -> Manifold:
    """Return a solid without some others."""
    for hole in holes:
        solid -= hole
    return solid


def corner_block() -> Manifold:
    """Two walls of 4 mm with a web between their screws; two M4 in each wall, 12 mm apart and 15 mm from the corner."""
    web = box(26, 26, 3, (2, 2, 11.5)) - Manifold.cube((60, 60, 9)).rotate((0, 0, 45)).translate((30, 0, 8))
    solid = box(30, 4, 26) + box(4, 30, 26) + web
    holes = [rod(M4, 10, (15, -3, z), "y") for z in (7, 19)] + [rod(M4, 10, (-3, 15, z), "x") for z in (7, 19)]
    return less(solid, *holes)


def foot_block() -> Manifold:
    """A block 24 mm high for a levelling screw M8, with a wall of 4.8 mm against the panel."""
    solid = box(40, 26, 24) + box(40, 4.8, 32)
    pocket = nut_pocket(13, 7, (20, 15, 17.5), "z")
    wall = [rod(M4, 10, (x, -3, 28), "y") for x in (8, 32)]
    hollows = [box(8, 18, 26, (x, 5, -1)) for x in (2, 30)]
    return less(solid, rod(M8, 30, (20, 15, -1), "z"), pocket, *wall, *hollows)


def y_holder(outer: float) -> Callable[[], Manifold]:
    """Return the maker of a holder for a bushing of this outer diameter: 12 mm from the rod to the carrier."""

    def make() -> Manifold:
        width = outer + 27
        solid = box(width, 32, 12) + box(outer + 11, 32, 11, (8, 0, 12))
        seat = rod(outer + 0.1, 36, (width / 2, -2, 12), "y")
        mouth = box(outer - 3, 36, 14, (15, -2, 14))  # the bushing is pressed in from below
        posts = [rod(INSERT, 11, (width / 2 + dx, 16, -1), "z") for dx in (-12, 12)]
        ties = [box(width + 4, 3.6, 2.2, (-2, y, 3)) for y in (4, 24)]
        return less(solid, seat, mouth, *posts, *ties)

    return make


def y_rod_clamp() -> Manifold:
    """A flange of 6.4 mm with a split collar for a rod of 8 mm; two M3, 28 mm apart."""
    solid = box(40, 18, 6.4) + rod(18, 12, (20, 9, 0), "z")
    bore = rod(8.1, 20, (20, 9, -2), "z")
    slit = box(12, 1.6, 8, (20, 8.2, 6.4))
    return less(solid, bore, slit, *[rod(M3, 10, (x, 9, -2), "z") for x in (6, 34)])


def y_idler_block() -> Manifold:
    """Two cheeks of 6 mm for the axle of the idler, on a foot of 7 mm; between them 13 mm."""
    solid = box(25, 68, 7) + box(6, 30, 54, (0, 19, 0)) + box(6, 30, 54, (19, 19, 0))
    axle = rod(M5, 40, (-5, 34, 45), "x")
    return less(solid, axle, *[rod(M4, 12, (12.5, y, -2), "z") for y in (8, 60)])


def y_belt_clamp() -> Manifold:
    """A foot of 4 mm and a stem with grooves for the teeth of a belt of 2 mm pitch."""
    solid = box(28, 20, 4) + box(16, 20, 24, (6, 0, 0))
    grooves = [box(7, 1.1, 2, (12, y, 15)) for y in (2, 4, 6, 8, 10, 12, 14, 16)]
    slot = box(7, 30, 1.6, (12, -4, 14))
    jaws = [rod(M3, 40, (9, y, -4), "z") for y in (5, 15)]
    feet = [rod(M3, 10, (x, 10, -2), "z") for x in (3, 25)]
    return less(solid, slot, *grooves, *jaws, *feet)


def x_carriage() -> Manifold:
    """Seats for two bushings on the upper rod and one on the lower, 44 mm apart, with jaw and yoke."""
    solid = box(54, 72, 16) + box(54, 14, 10, (0, 29, 16)) + box(18, 34, 28, (18, 19, 0))
    seats = [rod(15.1, 60, (-3, y, 16), "x") for y in (14, 58)]
    inserts = [rod(INSERT, 9, (x, y, 8), "z") for x in (12, 42) for y in (3.6, 24.4, 47.6)]
    more = [rod(INSERT, 9, (x, y, -1), "z") for x in (17, 37) for y in (30, 42)]
    probe = rod(INSERT, 9, (27, 67, -1), "z")
    belt = box(60, 8, 5, (-3, 32, 12))
    jaw = [rod(M3, 20, (x, 36, -3), "z") for x in (7, 47)]
    return less(solid, *seats, *inserts, *more, probe, belt, *jaw)


def _x_end() -> Manifold:
    """What both X ends share: a tower for Z bushings of 19 mm, beams for both X rods, a block for the Z nut.

    The X rods lie 18 mm in front of Z rod and Z screw, which stand 17 mm apart.
    """
    beams = box(59, 21, 16, (0, -6, 47)) + box(59, 21, 16, (0, -6, 91))
    walls = box(59, 6, 60, (0, 5, 47)) + box(50, 6, 60, (0, -12, 47))
    solid = box(28, 24, 60, (20, 11, 0)) + beams + walls + box(42, 20, 24, (6, 11, 47))
    rods = [rod(8.1, 44, (17, 6, z), "x") for z in (55, 99)]
    bushings = rod(19.1, 66, (34, 24, -5), "z")
    passing = [rod(12, 70, (34, 24, 55), "z"), rod(10.5, 30, (17, 24, 45), "z")]
    clamps = [rod(INSERT, 9, (x, -13, z), "y") for x in (10, 40) for z in (50, 104)]
    nut = [rod(INSERT, 9, (17 + a, 24 + b, 63), "z") for a, b in ((-6, -6), (6, -6), (-6, 6), (6, 6))]
    return less(solid, bushings, *passing, *rods, *clamps, *nut)


def x_end_motor() -> Manifold:
    """The X end with a face of 6 mm in front for a motor of size 17 and a tab of 5 mm for the switch."""
    holes = [rod(M3, 8, (25 + a * 15.5, -13, 77 + b * 15.5), "y") for a in (-1, 1) for b in (-1, 1)]
    collar = rod(22.4, 8, (25, -13, 77), "y")
    tab = less(box(5, 20, 24, (54, 11, 83)), *[rod(M2_5, 10, (52, y, 95), "x") for y in (16.3, 25.8)])
    return less(_x_end(), *holes, collar) + tab


def x_end_idler() -> Manifold:
    """The X end of the other hand, with two cheeks of 6 mm for the axle of the idler, 11 mm apart."""
    return less(_x_end(), rod(M5, 30, (25, -15, 77), "y")).mirror((1, 0, 0)).translate((59, 0, 0))


def z_bracket() -> Manifold:
    """A flange of 6 mm on a motor of size 17, a back of 4.8 mm against the portal, a seat for a rod of 10 mm.

    Screw and rod stand 30 mm in front of the portal and 17 mm apart. The right one is printed mirrored.
    """
    solid = (
        box(44, 60, 6) + box(44, 4.8, 52, (0, 55.2, 0)) + box(16.5, 40, 21, (27.5, 20, 0)) + box(4, 56, 22, (-4, 4, 0))
    )
    solid += box(4, 60, 52, (-4, 0, 0)) - Manifold.cube((10, 90, 90)).rotate((42, 0, 0)).translate((-7, 4, 6))
    holes = [rod(M3, 10, (17 + a * 15.5, 30 + b * 15.5, -2), "z") for a in (-1, 1) for b in (-1, 1)]
    collar = rod(22.4, 8, (17, 30, -2), "z")
    seat = rod(10.1, 30, (34, 30, 6), "z")
    clamp = rod(INSERT, 9, (36, 42, 14), "x")
    backs = [rod(M4, 10, (x, 53, z), "y") for x, z in ((28, 12), (28, 28), (28, 44), (14, 44))]
    return less(solid, *holes, collar, seat, clamp, *backs)


def z_top() -> Manifold:
    """A back of 4.8 mm against the portal and a split seat for a rod of 10 mm, 30 mm in front of it.

    The right one is printed mirrored.
    """
    solid = box(55, 4.8, 22, (0, -0.8, 0)) + box(24, 42, 16, (31, -38, 0))
    seat = rod(10.1, 16, (43, -26, -1), "z")
    slit = box(1.6, 14, 20, (42.2, -40, -2))
    clamp = rod(INSERT, 9, (47, -34, 8), "x")
    return less(solid, seat, slit, clamp, *[rod(M4, 10, (x, -3, 11), "y") for x in (7, 37)])


def head_duct() -> Manifold:
    """A hollow duct with a flange of 4 mm and bosses of 12 mm for two fans."""
    solid = box(44, 34, 30) + box(44, 4, 44)
    hollow = box(38, 26, 32, (3, 5, -1))
    outlet = box(20, 12, 8, (12, 28, -1))
    flange = [rod(M3, 10, (x, -2, 38), "y") for x in (12, 32)]
    bosses = [box(6.4, 6.4, 12, (x - 3.2, y - 3.2, 18)) for x in (6, 22, 38) for y in (8, 30)]
    solid = less(solid, hollow, outlet, *flange)
    for boss in bosses:
        solid += boss
    screws = [rod(2.5, 13, (x, y, 17.5), "z") for x in (6, 22, 38) for y in (8, 30)]
    return less(solid, *screws)


def feeder_mount() -> Manifold:
    """An angle: a plate of 5 mm for motor and feeder, a back of 5 mm against the portal."""
    solid = box(46, 48, 5) + box(46, 5, 44, (0, 0, 0))
    holes = [rod(M3, 10, (23 + a * 15.5, 26 + b * 15.5, -2), "z") for a in (-1, 1) for b in (-1, 1)]
    return less(solid, *holes, rod(22.4, 10, (23, 26, -2), "z"), *[rod(M4, 10, (23, -2, z), "y") for z in (10, 38)])


def spool_arm() -> Manifold:
    """An arm for a spool, with a back of 7 mm."""
    solid = box(24, 7, 48) + box(18, 96, 18, (3, 0, 15)) + box(24, 6, 30, (0, 90, 12))
    return less(solid, box(10, 80, 20, (7, 10, 21)), *[rod(M4, 14, (12, -3, z), "y") for z in (10, 38)])


def supply_bracket() -> Manifold:
    """An angle: a flange of 4 mm under the supply, a back of 5 mm against the gusset."""
    solid = box(36, 30, 4) + box(36, 5, 34)
    flange = [rod(M4, 10, (x, 19, -2), "z") for x in (8, 28)]
    return less(solid, *flange, *[rod(M4, 12, (18, -3, z), "y") for z in (9, 29)])


def cable_guide() -> Manifold:
    """A bow over the moving cable, on a foot of 4 mm."""
    solid = box(40, 18, 4) + rod(22, 18, (20, 0, 14), "y")
    return less(solid, rod(16, 24, (20, -3, 14), "y"), *[rod(M3, 10, (x, 9, -2), "z") for x in (6, 34)])


def inlet_box() -> Manifold:
    """A box over the terminals of the mains inlet, open towards the gusset where its back of 4.8 mm closes it."""
    solid = box(62, 44, 52)
    hollow = box(56, 38, 50, (3, 3, 4.8))
    window = box(28, 10, 20, (17, 38, 16))
    lugs = [box(9, 10, 12, (x, 34, 20)) for x in (4, 49)]
    solid = less(solid, hollow, window)
    for lug in lugs:
        solid += lug
    inserts = [rod(INSERT, 9, (x, 36, 26), "y") for x in (8.5, 53.5)]
    return less(solid, *inserts, *[rod(M4, 10, (31, y, -2), "z") for y in (10, 34)])


def wheel_m4() -> Manifold:
    """A wheel of 22 mm with a pocket for a nut M4."""
    rim = [rod(3, 12, (11.5 * x, 11.5 * y, -2), "z") for x, y in ((1, 0), (0, 1), (-1, 0), (0, -1))]
    return less(rod(22, 8, (0, 0, 0), "z"), rod(M4, 12, (0, 0, -2), "z"), nut_pocket(7, 3.4, (0, 0, 4.8), "z"), *rim)


PARTS: dict[str, Callable[[], Manifold]] = {
    "corner-block.stl": corner_block,
    "foot-block.stl": foot_block,
    "y-holder-15.stl": y_holder(15.0),
    "y-holder-16.stl": y_holder(15.875),
    "y-holder-19.stl": y_holder(19.0),
    "y-rod-clamp-8.stl": y_rod_clamp,
    "y-idler-block.stl": y_idler_block,
    "y-belt-clamp.stl": y_belt_clamp,
    "x-carriage.3mf": x_carriage,
    "x-end-motor.3mf": x_end_motor,
    "x-end-idler.3mf": x_end_idler,
    "z-bracket.3mf": z_bracket,
    "z-top.stl": z_top,
    "head-duct.stl": head_duct,
    "feeder-mount.stl": feeder_mount,
    "spool-arm.stl": spool_arm,
    "supply-bracket.stl": supply_bracket,
    "cable-guide.stl": cable_guide,
    "inlet-box.stl": inlet_box,
    "wheel-m4.stl": wheel_m4,
}


def triangles(solid: Manifold) -> list[tuple[Point, Point, Point]]:
    """Return the facets, each begun at its least corner, sorted: the same for the same solid."""
    mesh = solid.to_mesh()
    points = [tuple(round(float(value), 4) + 0.0 for value in row[:3]) for row in mesh.vert_properties]
    found = []
    for row in mesh.tri_verts:
        facet = [points[i] for i in row]
        if len(set(facet)) == 3:
            first = facet.index(min(facet))
            found.append((*facet[first:], *facet[:first]))
    return sorted(found)


def write_stl(path: Path, facets: Sequence[tuple[Point, Point, Point]]) -> None:
    """Write a binary STL."""
    body = b"".join(struct.pack("<12fH", 0, 0, 0, *[c for corner in one for c in corner], 0) for one in facets)
    path.write_bytes(path.stem.encode().ljust(80) + struct.pack("<I", len(facets)) + body)


TYPES = """<?xml version="1.0" encoding="UTF-8"?>
<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">
<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>
<Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/>
</Types>
"""
RELATIONS = """<?xml version="1.0" encoding="UTF-8"?>
<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">
<Relationship Target="/3D/3dmodel.model" Id="rel0"
 Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/>
</Relationships>
"""
MODEL = """<?xml version="1.0" encoding="UTF-8"?>
<model unit="millimeter" xml:lang="en-US" xmlns="http://schemas.microsoft.com/3dmanufacturing/core/2015/02">
<resources><object id="1" type="model"><mesh>
<vertices>
{vertices}
</vertices>
<triangles>
{triangles}
</triangles>
</mesh></object></resources>
<build><item objectid="1"/></build>
</model>
"""


def write_3mf(path: Path, facets: Sequence[tuple[Point, Point, Point]]) -> None:
    """Write a 3MF, a ZIP whose entries all carry one fixed date."""
    points = sorted({corner for facet in facets for corner in facet})
    number = {point: at for at, point in enumerate(points)}
    vertices = "\n".join(f'<vertex x="{x:g}" y="{y:g}" z="{z:g}"/>' for x, y, z in points)
    rows = ([number[corner] for corner in facet] for facet in facets)
    model = MODEL.format(
        vertices=vertices, triangles="\n".join(f'<triangle v1="{a}" v2="{b}" v3="{c}"/>' for a, b, c in rows)
    )
    entries = {"[Content_Types].xml": TYPES, "_rels/.rels": RELATIONS, "3D/3dmodel.model": model}
    with zipfile.ZipFile(path, "w") as archive:
        for name, text in entries.items():
            entry = zipfile.ZipInfo(name, (1980, 1, 1, 0, 0, 0))
            entry.create_system = 3
            entry.external_attr = 0o644 << 16
            archive.writestr(entry, text.encode())  # stored, not packed: packing differs between versions


def main() -> None:
    """Write all meshes."""
    HERE.mkdir(exist_ok=True)
    for name, make in PARTS.items():
        write = write_3mf if name.endswith(".3mf") else write_stl
        write(HERE / name, triangles(make()))


if __name__ == "__main__":
    main()
