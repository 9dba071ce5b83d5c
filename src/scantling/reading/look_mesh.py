"""What is in a mesh, in a maker's words, and the entries of a printed part."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from scantling.quantities import show_number
from scantling.reading.look import Feature, Look, mm, off_text, point_text
from scantling.reading.look_drawing import pattern_words
from scantling.shapes.mesh import Corner, MeshFacts, MeshFile, measure
from scantling.shapes.mesh_features import Hexagon, MeshFeatures, recognise_mesh
from scantling.shapes.mesh_walls import Cylinder

SEVERAL = "a printed part is one object: export each in a file of its own before a part names it"
TOO_FINE = "too many triangles to look for bores and walls; export it coarser to see them"
_ALIGNED = 0.999


def look_at_meshes(file: MeshFile) -> Look:
    """Return what is in a mesh file; entries only where it holds one closed object."""
    features: list[Feature] = []
    notes = [str(note) for note in file.notes]
    looked: list[tuple[MeshFacts, MeshFeatures]] = []
    for number, mesh in enumerate(file.meshes, 1):
        facts, found = measure(mesh), recognise_mesh(mesh)
        looked.append((facts, found))
        part = f"object {number}: " if len(file.meshes) > 1 else ""
        notes += [part + str(note) for note in facts.notes] + ([part + TOO_FINE] if not found.seen else [])
        features += [Feature(part + f.what, f.size, f.where, f.fit) for f in _features(facts, found)]
    if len(looked) > 1:
        notes.append(SEVERAL)
    kind = "mesh" if len(looked) == 1 else f"mesh of {len(looked)} objects"
    entries = _entries(file.file, looked[0][1]) if len(looked) == 1 and looked[0][0].closed else ""
    size = " × ".join(mm(value) for value in _box(looked)) + f" mm, in {file.unit}"
    return Look(file.file, kind, size, tuple(features), tuple(notes), entries)


def _box(looked: Sequence[tuple[MeshFacts, MeshFeatures]]) -> list[float]:
    lows, highs = [facts.low for facts, _ in looked], [facts.high for facts, _ in looked]
    return [max(high[k] for high in highs) - min(low[k] for low in lows) for k in range(3)]


def _features(facts: MeshFacts, found: MeshFeatures) -> Iterator[Feature]:
    volume = "not closed, so without a volume"
    if facts.volume_mm3 is not None:
        volume = f"{show_number(facts.volume_mm3 / 1000, 2)} cm³"
    yield Feature("body", volume, "", f"{facts.triangles} triangles")
    for what, cylinders in (("bore", found.bores), ("boss", found.bosses), ("round part", found.partial)):
        for one in cylinders:
            yield _round(what, one, facts.low)
    for hexagon in found.hexagons:
        what = "hexagon pocket" if hexagon.concave else "hexagon"
        size = f"{mm(hexagon.across_flats_mm)} mm across flats, {mm(hexagon.depth_mm)} mm deep{_ends(hexagon)}"
        yield Feature(what, size, _place(hexagon.centre, facts.low, hexagon.axis), off_text(hexagon.residual_mm))
    for wall in found.thicknesses:
        yield Feature("thickness", f"{mm(wall.thickness_mm)} mm", f"across {axis_words(wall.axis)}")
    for axis, pattern in found.patterns:
        where = f"square to {axis_words(axis)}"
        yield Feature(pattern.kind, pattern_words(pattern), where, off_text(pattern.residual_mm))


def _round(what: str, one: Cylinder, low: Corner) -> Feature:
    """A round surface; between its facets a mesh is narrower than at its corners, so both are told."""
    size = f"{mm(one.diameter_mm)} mm, {mm(one.depth_mm)} mm long"
    if mm(one.across_facets_mm) != mm(one.diameter_mm):
        size += f" ({mm(one.across_facets_mm)} mm across facets)"
    if what == "round part":
        size += f", {show_number(one.sweep_deg, 0)} deg of it, {'hollow' if one.concave else 'outward'}"
    else:
        size += _ends(one)
    fit = f"{one.facets} facets, {off_text(one.residual_mm)}"
    return Feature(what, size, _place(one.centre, low, one.axis), fit)


def _ends(one: Cylinder | Hexagon) -> str:
    if not one.concave:
        return ""
    if one.ends == ("open", "open"):
        return ", right through"
    return ", with a floor" if "floor" in one.ends else ", with a step"


def _place(centre: Corner, low: Corner, axis: Corner) -> str:
    at = [value - least for value, least in zip(centre, low, strict=True)]
    return f"{point_text(at)}, along {axis_words(axis)}"


def axis_words(axis: Corner) -> str:
    """Return ``x``, ``y`` or ``z``, or the direction itself."""
    for name, value in zip("xyz", axis, strict=True):
        if abs(value) > _ALIGNED:
            return name
    return f"({', '.join(show_number(round(value, 3) + 0.0, 3) for value in axis)})"


def _entries(file: str, found: MeshFeatures) -> str:
    """A printed part whose bores and thicknesses are sizes, for the maker to name."""
    lines = [
        "parts:",
        "  PRINTED-PART:",
        "    kind: printed",
        f"    meshes: [{{mesh: {file}}}]",
        "    plastics: [PLASTIC]",
    ]
    sizes = list(_sizes(found))
    lines += ["    sizes:", *sizes] if sizes else []
    return "\n".join([*lines, "places:", "  PLACE: {reference: PRINTED-PART}"]) + "\n"


def _sizes(found: MeshFeatures) -> Iterator[str]:
    bores = dict.fromkeys(mm(bore.across_facets_mm) for bore in found.bores)
    pockets = dict.fromkeys(mm(h.across_flats_mm) for h in found.hexagons if h.concave)
    walls = dict.fromkeys(mm(wall.thickness_mm) for wall in found.thicknesses)
    for name, values, words in (
        ("BORE", bores, "across the facets of the bore"),
        ("POCKET", pockets, "across the flats of the pocket"),
        ("WALL", walls, "between two flat faces"),
    ):
        for number, value in enumerate(values, 1):
            yield f"      {name}-{number}: {value} mm  # {words}"
