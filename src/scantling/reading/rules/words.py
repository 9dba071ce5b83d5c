"""Words that the tables must know: belts, materials, plastics, papers, drill bits."""

from __future__ import annotations

from collections.abc import Iterable

from scantling.errors import LookUpError, nearest
from scantling.model.kinds import Belt, Filament, Printed, Pulley, Rod, SheetStock, ThreadedRod
from scantling.model.part import Part
from scantling.reading.scene import Scene
from scantling.tables.belt_profiles import belt_profile
from scantling.tables.bits import bit, bit_sets
from scantling.tables.materials import ALIASES, material_names
from scantling.tables.papers import paper


def words(scene: Scene) -> None:
    """Note words that no table holds and that no figures of the maker's own replace."""
    for name, part in scene.design.parts.items():
        if isinstance(part, Belt | Pulley):
            _profile(scene, name, part)
        _material(scene, name, part)
    _plastics(scene)
    workshop = scene.workshop
    if workshop is not None:
        for number, name in enumerate(workshop.bits):
            _bit(scene, name, number)
        _paper(scene, workshop.paper.size)


def _profile(scene: Scene, name: str, part: Belt | Pulley) -> None:
    try:
        belt_profile(part.profile)
    except LookUpError as error:
        scene.add("42", f"the part {name!r}: {error.what}", error.mend, "design", "parts", name, "profile")


def _material(scene: Scene, name: str, part: Part) -> None:
    """Rods and sheets take what they do not say themselves from the table; elsewhere a material is a remark."""
    if part.material is None or not isinstance(part, Rod | ThreadedRod | SheetStock):
        return
    if isinstance(part, SheetStock) and part.modulus_mpa is not None and part.density_kg_m3 is not None:
        return
    known = (*material_names(), *ALIASES)
    if part.material.casefold() not in {word.casefold() for word in known}:
        what = f"the part {name!r}: no material is called {part.material!r}"
        mend = nearest(part.material, known)
        if isinstance(part, SheetStock):
            mend += "; another one needs its modulus and density"
        scene.add("42", what, mend, "design", "parts", name, "material")


def _plastics(scene: Scene) -> None:
    filaments = {part.plastic for part in scene.design.parts.values() if isinstance(part, Filament)}
    for name, part in scene.design.parts.items():
        if isinstance(part, Filament) and part.density_kg_m3 is None:
            _plastic(scene, part.plastic, material_names(), "design", "parts", name, "plastic")
        if isinstance(part, Printed):
            for number, plastic in enumerate(part.plastics):
                _plastic(scene, plastic, {*filaments, *material_names()}, "design", "parts", name, "plastics", number)
    bed = scene.workshop.print_bed if scene.workshop is not None else None
    for number, plastic in enumerate(bed.plastics if bed is not None and not scene.is_shared else ()):
        _plastic(scene, plastic, {*filaments, *material_names()}, "workshop", "print-bed", "plastics", number)


def _plastic(scene: Scene, plastic: str, known: Iterable[str], *path: str | int) -> None:
    if plastic not in known:
        mend = f"{nearest(plastic, known)}; another one needs a part of kind filament with its density"
        scene.add("42", f"no plastic is called {plastic!r}", mend, *path)


def _paper(scene: Scene, name: str) -> None:
    try:
        paper(name)
    except LookUpError as error:
        scene.add("42", error.what, error.mend, "workshop", "paper", "size")


def _bit(scene: Scene, name: str, number: int) -> None:
    if name in bit_sets():
        return
    try:
        bit(name)
    except LookUpError as error:
        mend = f"{error.mend}; or a set: {nearest(name, bit_sets())}"
        scene.add("42", error.what, mend, "workshop", "bits", number)
