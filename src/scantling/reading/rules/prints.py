"""Printed parts: a mesh suits features of places that are there."""

from __future__ import annotations

from scantling.model.expression import Feature
from scantling.model.kinds import Printed
from scantling.reading.rules.sizes import expect_feature
from scantling.reading.scene import Scene


def prints(scene: Scene) -> None:
    """Note meshes that suit what no place has."""
    for name, part in scene.design.parts.items():
        if isinstance(part, Printed):
            for number, variant in enumerate(part.meshes):
                for key in variant.suits:
                    _suited(scene, key, variant.mesh, ("parts", name, "meshes", number, "suits", key))


def _suited(scene: Scene, key: str, mesh: str, path: tuple[str | int, ...]) -> None:
    said_by = f"the mesh {mesh!r}"
    place, dot, feature = key.partition(".")
    if not dot:
        mend = f"name a feature of a place, as in {key}.diameter"
        scene.add("37", f"{said_by} suits {key!r}, which is no feature of a place", mend, "design", *path)
    elif scene.expect("places", place, said_by, "design", *path):
        expect_feature(scene, said_by, path, Feature(place, feature))
