"""Parts: used somewhere, with threads, fits and words that exist."""

from __future__ import annotations

from scantling.errors import LookUpError
from scantling.model.kinds import Bushing, Filament, Motor, Printed, Pulley, Rod
from scantling.model.part import Part
from scantling.reading.scene import Scene
from scantling.tables.limits import LARGEST_MM, limits_um
from scantling.tables.threads import thread

# which fields hold a class of fit, of what size, and whether it is a hole's
_FITS: tuple[tuple[type[Part], str, str, str, bool], ...] = (
    (Rod, "fit", "fit", "diameter_mm", False),
    (Motor, "shaft_fit", "shaft-fit", "shaft_diameter_mm", False),
    (Pulley, "bore_fit", "bore-fit", "bore_mm", True),
    (Bushing, "bore_fit", "bore-fit", "bore_mm", True),
)


def parts(scene: Scene) -> None:
    """Note parts with threads and fits that no standard has."""
    for name, part in scene.design.parts.items():
        _thread(scene, name, part)
        for kind, field, key, size, is_hole in _FITS:
            zone = getattr(part, field) if isinstance(part, kind) else None
            if zone is not None:
                _fit(scene, name, key, zone, getattr(part, size), is_hole)
        if isinstance(part, Printed) and not part.plastics:
            what = f"the part {name!r} may be printed in no plastic"
            scene.add("44", what, "write one at least, as in plastics: [PETG]", "design", "parts", name, "plastics")


def _thread(scene: Scene, name: str, part: Part) -> None:
    written = getattr(part, "thread", None)
    if written is None:
        return
    try:
        thread(written)
    except LookUpError as error:
        scene.add("40", f"the part {name!r}: {error.what}", error.mend, "design", "parts", name, "thread")


def _fit(scene: Scene, name: str, key: str, zone: str, size: object, is_hole: bool) -> None:
    path = ("design", "parts", name, key)
    size_mm = min(float(getattr(size, "value", LARGEST_MM)), LARGEST_MM)
    try:
        limits_um(size_mm if size_mm > 0 else LARGEST_MM, zone)
    except LookUpError as error:
        scene.add("41", f"the part {name!r}: {error.what}", error.mend, *path)
        return
    if zone[:1].isupper() != is_hole:
        right = zone.upper() if is_hole else zone.lower()
        what = f"the part {name!r}: {zone!r} is the fit of a {'shaft' if is_hole else 'hole'}"
        scene.add("41", what, f"write {right}; holes have capital letters, shafts small ones", *path)


def dangling(scene: Scene) -> None:
    """Note parts that nothing uses; only where everything that could use them was read."""
    shop = scene.shop_file
    if not scene.is_complete("parts", "places") or (shop is not None and (shop.lost or shop.broken)):
        return
    used = used_parts(scene)
    for name in scene.design.parts:
        if name not in used:
            what = f"the part {name!r} is used nowhere"
            scene.add("31", what, "make it an option of a place, or delete it", "design", "parts", name)


def used_parts(scene: Scene) -> set[str]:
    """Return all parts that a place, an option, a printed part's plastic, a rule, a stock or an offer names."""
    used: set[str] = set()
    for place in scene.design.places.values():
        for option in place.options:
            used |= {option.part, *option.brings}
    plastics = {word for one in scene.design.parts.values() if isinstance(one, Printed) for word in one.plastics}
    for name, part in scene.design.parts.items():
        if isinstance(part, Filament) and part.plastic in plastics:
            used.add(name)
    workshop = scene.workshop
    if workshop is not None:
        used |= {one.part for rows in (workshop.offers, workshop.stock, workshop.actuals) for one in rows}
        used |= {rule.part for rule in workshop.spares if rule.part is not None}
    return used
