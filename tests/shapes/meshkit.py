"""Small meshes made in memory, as STL, OBJ and 3MF files."""

import io
import struct
import zipfile
from math import cos, pi, sin

CUBE_POINTS = [(x, y, z) for z in (0, 1) for y in (0, 1) for x in (0, 1)]
CUBE_FACES = [(0, 2, 3, 1), (4, 5, 7, 6), (0, 1, 5, 4), (2, 6, 7, 3), (0, 4, 6, 2), (1, 3, 7, 5)]


def triangles_of(points, faces):
    """Corners of every triangle; faces are cut up from their first corner."""
    return [[points[f[0]], points[f[k]], points[f[k + 1]]] for f in faces for k in range(1, len(f) - 1)]


def cube(size=1.0, at=(0, 0, 0)):
    """A cube, its triangles anticlockwise from outside."""
    moved = [tuple(size * p + a for p, a in zip(point, at, strict=True)) for point in CUBE_POINTS]
    return triangles_of(moved, CUBE_FACES)


def stl(triangles):
    """Binary STL."""
    body = b"".join(struct.pack("<12fH", 0, 0, 0, *(v for corner in t for v in corner), 0) for t in triangles)
    return b"\0" * 80 + struct.pack("<I", len(triangles)) + body


def text_stl(triangles):
    """Text STL."""
    lines = ["solid part"]
    for corners in triangles:
        lines += [
            "facet normal 0 0 0",
            "outer loop",
            *(f"vertex {x} {y} {z}" for x, y, z in corners),
            "endloop",
            "endfacet",
        ]
    return "\n".join([*lines, "endsolid part", ""]).encode()


def three_mf(objects, unit="millimeter", items=None):
    """3MF; ``objects`` are (name, points, triangles) and ``items`` (number, transform text)."""
    parts = []
    for number, (name, points, triangles) in enumerate(objects, start=1):
        corners = "".join(f'<vertex x="{x}" y="{y}" z="{z}"/>' for x, y, z in points)
        faces = "".join(f'<triangle v1="{a}" v2="{b}" v3="{c}"/>' for a, b, c in triangles)
        mesh = f"<mesh><vertices>{corners}</vertices><triangles>{faces}</triangles></mesh>"
        parts.append(f'<object id="{number}" type="model" name="{name}">{mesh}</object>')
    placed = items or [(number, "") for number in range(1, len(objects) + 1)]
    build = "".join(f'<item objectid="{n}"' + (f' transform="{t}"' if t else "") + "/>" for n, t in placed)
    core = "http://schemas.microsoft.com/3dmanufacturing/core/2015/02"
    model = f'<?xml version="1.0" encoding="UTF-8"?><model unit="{unit}" xml:lang="en-US" xmlns="{core}">'
    model += f"<resources>{''.join(parts)}</resources><build>{build}</build></model>"
    types = (
        '<?xml version="1.0" encoding="UTF-8"?><Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types">'
        '<Default Extension="rels" ContentType="application/vnd.openxmlformats-package.relationships+xml"/>'
        '<Default Extension="model" ContentType="application/vnd.ms-package.3dmanufacturing-3dmodel+xml"/></Types>'
    )
    relations = (
        '<?xml version="1.0" encoding="UTF-8"?>'
        '<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="r" '
        'Target="/3D/3dmodel.model" Type="http://schemas.microsoft.com/3dmanufacturing/2013/01/3dmodel"/></Relationships>'
    )
    stream = io.BytesIO()
    with zipfile.ZipFile(stream, "w", zipfile.ZIP_DEFLATED) as folder:
        folder.writestr("[Content_Types].xml", types)
        folder.writestr("_rels/.rels", relations)
        folder.writestr("3D/3dmodel.model", model)
    return stream.getvalue()


def ring(centre, radius_mm, count, phase=0.0):
    """Points around a circle, anticlockwise."""
    turns = [phase + 2 * pi * k / count for k in range(count)]
    return [(centre[0] + radius_mm * cos(t), centre[1] + radius_mm * sin(t)) for t in turns]


def plate(outer, holes, low=0.0, high=1.0):
    """A plate between two heights: its flat faces cut up by a constrained triangulation, its walls in pairs.

    outer : points anticlockwise          holes : lists of points anticlockwise
    """
    import shapely

    area = shapely.Polygon(outer, holes)
    faces = shapely.constrained_delaunay_triangles(area).geoms
    found = []
    for face in faces:
        a, b, c = (tuple(p) for p in shapely.geometry.polygon.orient(face).exterior.coords[:3])
        found += [[(*a, high), (*b, high), (*c, high)], [(*a, low), (*c, low), (*b, low)]]
    for ring_points, outward in [(outer, True), *((hole, False) for hole in holes)]:
        for p, q in zip(ring_points, [*ring_points[1:], ring_points[0]], strict=True):
            a, b = (p, q) if outward else (q, p)
            found += [[(*a, low), (*b, low), (*b, high)], [(*a, low), (*b, high), (*a, high)]]
    return found


def pocket(outer, inner, low, floor, high):
    """A plate with a blind pocket of the form ``inner`` from the top down to ``floor``."""
    import shapely

    rim = shapely.constrained_delaunay_triangles(shapely.Polygon(outer, [inner])).geoms
    full = shapely.constrained_delaunay_triangles(shapely.Polygon(outer)).geoms
    bottom = shapely.constrained_delaunay_triangles(shapely.Polygon(inner)).geoms
    found = []
    for faces, z, up in ((rim, high, True), (bottom, floor, True), (full, low, False)):
        for face in faces:
            a, b, c = (tuple(p) for p in shapely.geometry.polygon.orient(face).exterior.coords[:3])
            found.append([(*a, z), (*b, z), (*c, z)] if up else [(*a, z), (*c, z), (*b, z)])
    for points, z0, z1, outward in ((outer, low, high, True), (inner, floor, high, False)):
        for p, q in zip(points, [*points[1:], points[0]], strict=True):
            a, b = (p, q) if outward else (q, p)
            found += [[(*a, z0), (*b, z0), (*b, z1)], [(*a, z0), (*b, z1), (*a, z1)]]
    return found


def counterbore(outer, small, big, low, floor, high):
    """A plate with a through hole ``small`` and a wider one ``big`` from the top down to ``floor``."""
    import shapely

    levels = ((shapely.Polygon(outer, [big]), high, True), (shapely.Polygon(big, [small]), floor, True))
    found = []
    for area, z, up in (*levels, (shapely.Polygon(outer, [small]), low, False)):
        for face in shapely.constrained_delaunay_triangles(area).geoms:
            a, b, c = (tuple(p) for p in shapely.geometry.polygon.orient(face).exterior.coords[:3])
            found.append([(*a, z), (*b, z), (*c, z)] if up else [(*a, z), (*c, z), (*b, z)])
    walls = ((outer, low, high, True), (big, floor, high, False), (small, low, floor, False))
    for points, z0, z1, outward in walls:
        for p, q in zip(points, [*points[1:], points[0]], strict=True):
            a, b = (p, q) if outward else (q, p)
            found += [[(*a, z0), (*b, z0), (*b, z1)], [(*a, z0), (*b, z1), (*a, z1)]]
    return found


def turned(triangles, axis, angle):
    """Triangles turned about an axis through the origin (Rodrigues' formula)."""
    length = sum(a * a for a in axis) ** 0.5
    n = [a / length for a in axis]
    c, s = cos(angle), sin(angle)

    def turn(p):
        dot = sum(a * b for a, b in zip(n, p, strict=True))
        cross = (n[1] * p[2] - n[2] * p[1], n[2] * p[0] - n[0] * p[2], n[0] * p[1] - n[1] * p[0])
        return tuple(c * p[k] + s * cross[k] + (1 - c) * dot * n[k] for k in range(3))

    return [[turn(p) for p in triangle] for triangle in triangles]
