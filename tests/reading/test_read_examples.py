"""Whole projects: what is read, where it stands, what its files were, and how fast it goes."""

from __future__ import annotations

import hashlib
import json
from pathlib import Path

import jsonschema
import pytest
import yaml

from scantling.build.fasteners import standard_part
from scantling.errors import FaultsError, LookUpError, Where
from scantling.model.kinds import Printed, Rod
from scantling.reading.constants import Constants
from scantling.reading.fields import field_types, models
from scantling.reading.graphs import circles, depths
from scantling.reading.lock import Key, read_lock
from scantling.reading.project import read_design, read_project
from scantling.reading.schemas import SHORT_FORMS, json_schemas
from scantling.reading.texts import design_from_texts
from scantling.reading.workshop import read_workshop
from scantling.tables.fastener_names import is_standard_fastener

EXAMPLES = Path(__file__).parents[2] / "examples"
PLOTTER = EXAMPLES / "plotter"


def test_the_plotter_is_read_whole():
    project = read_project(PLOTTER, "village", copies=3)
    design, workshop = project.design, project.workshop
    assert list(design.places) == ["panel", "x-motor", "x-pulley", "x-belt", "x-rod", "x-bushing", "carriage"]
    rod = design.parts["rod-8-hardened"]
    assert isinstance(rod, Rod)
    assert (rod.id, rod.diameter_mm.value, rod.surface_hardness_hrc.value) == ("rod-8-hardened", 8, 60)
    assert isinstance(design.parts["carriage-block"], Printed)
    assert [option.part for option in design.places["x-motor"].options] == ["motor-17", "motor-17-flat", "motor-14"]
    assert design.steps["motor"].uses == {"panel": "1", "x-motor": "all"}
    assert design.joints["motor-to-panel"].into.depth == "x-motor.tapped-depth"
    assert (workshop.copies, len(workshop.offers), workshop.offers[0].levels[0].packs) == (3, 25, 4)
    assert project.outlines["panel"].area_mm2 == pytest.approx(90**2 - (4 - 3.14159265) * 6**2 - 20 * 18, rel=1e-6)
    assert project.meshes["meshes/carriage.stl"].closed


def test_every_value_knows_where_it_stands():
    project = read_project(PLOTTER, "village")
    lines = (PLOTTER / "design.yaml").read_text(encoding="utf-8").split("\n")
    for path, word in (
        (("parts", "rod-8-soft", "fit"), "h9"),
        (("parts", "rod-8-soft"), "rod-8-soft"),
        (("places", "x-motor", "stand-ins", 1), "motor-14"),
        (("sheets", "panel", "holes", 1, "repeat", 0, 1), "18 mm"),
        (("axes", "x", "moves", 2, "mass"), "60 g"),
        (("sizes", "span"), "300 mm"),
    ):
        where = project.where("design", *path)
        assert where.file == "design.yaml"
        assert lines[where.line - 1][where.column - 1 :].startswith(word), path
    assert project.where("workshop", "offers", 0, "price") == Where("workshops/offers/village.csv", 2, 4)
    assert project.where("design", "joints", "pen-clamp", "nonsense").line == 84
    assert project.where("nothing") == Where()


def test_the_digests_are_of_all_files_that_were_read():
    digests = read_project(PLOTTER, "village").digests
    assert list(digests) == [
        "design.yaml",
        "drawings/panel.dxf",
        "meshes/carriage.stl",
        "workshops/offers/village.csv",
        "workshops/village.yaml",
    ]
    for name, digest in digests.items():
        assert digest == hashlib.sha256((PLOTTER / name).read_bytes()).hexdigest()


def test_a_design_and_a_workshop_alone():
    assert read_design(PLOTTER).machine.name == "Sedge"
    assert len(read_workshop(PLOTTER / "workshops" / "village.yaml").offers) == 25


WORKSHOPS = sorted(EXAMPLES.glob("*/workshops/*.yaml"))


@pytest.mark.parametrize("workshop", WORKSHOPS, ids=[path.relative_to(EXAMPLES).as_posix() for path in WORKSHOPS])
def test_every_example_is_read_in_every_workshop(workshop):
    project = read_project(workshop.parents[1], workshop)
    assert project.design.places
    assert project.workshop.offers


def test_the_same_files_give_equal_projects():
    first, second = read_project(PLOTTER, "village"), read_project(PLOTTER, "village")
    assert (first.design, first.workshop, dict(first.wheres)) == (second.design, second.workshop, dict(second.wheres))


def as_an_editor_sees(value):
    """YAML 1.2 as editors take it: numbers are numbers."""
    if isinstance(value, dict):
        return {key: as_an_editor_sees(item) for key, item in value.items()}
    if isinstance(value, list):
        return [as_an_editor_sees(item) for item in value]
    for kind in (int, float):
        try:
            return kind(value)
        except ValueError:
            continue
    return value


SCHEMAS = json_schemas()


# Source: meta-schema of JSON Schema draft 2020-12, as the library jsonschema ships it
@pytest.mark.outside
@pytest.mark.parametrize("name", sorted(SCHEMAS))
def test_a_schema_is_a_schema(name):
    schema = SCHEMAS[name]
    jsonschema.Draft202012Validator.check_schema(schema)
    assert schema["title"]
    assert json.loads(json.dumps(schema)) == schema


def files_with_schemas():
    """Every YAML file of the examples with the name of its schema: designs, workshops, sections in files."""
    for path in sorted(EXAMPLES.glob("*/design.yaml")):
        yield path, "design"
        for section, value in yaml.load(path.read_text(encoding="utf-8"), Loader=yaml.BaseLoader).items():
            names = [value] if isinstance(value, str) else value if isinstance(value, list) else []
            yield from ((path.parent / name, section) for name in names if str(name).endswith(".yaml"))
    for path in sorted(EXAMPLES.glob("*/workshops/*.yaml")):
        yield path, "workshop"


FILES = [pytest.param(path, kind, id=path.relative_to(EXAMPLES).as_posix()) for path, kind in files_with_schemas()]


@pytest.mark.parametrize("see", [lambda value: value, as_an_editor_sees], ids=["as text", "as an editor sees it"])
@pytest.mark.parametrize(("path", "kind"), FILES)
def test_the_examples_fit_the_schemas(path, kind, see):
    validator = jsonschema.Draft202012Validator(SCHEMAS[f"{kind}.schema.json"])
    data = yaml.load(path.read_text(encoding="utf-8"), Loader=yaml.BaseLoader)
    assert [error.message for error in validator.iter_errors(see(data))] == []


@pytest.mark.parametrize(
    "spoil",
    [
        lambda data: data["parts"]["rod-8-soft"].update(diametre="8 mm"),
        lambda data: data["parts"]["rod-8-soft"].pop("kind"),
        lambda data: data["parts"]["rod-8-soft"].pop("diameter"),
        lambda data: data["places"]["x-rod"].update({"face": "w"}),
        lambda data: data.update(parts="parts.txt"),
        lambda data: data["axes"]["x"].update(drive="rope"),
        lambda data: data.pop("machine"),
    ],
)
def test_what_a_schema_refuses(spoil):
    data = yaml.load((PLOTTER / "design.yaml").read_text(encoding="utf-8"), Loader=yaml.BaseLoader)
    spoil(data)
    assert not jsonschema.Draft202012Validator(SCHEMAS["design.schema.json"]).is_valid(data)


@pytest.mark.parametrize("value", ["parts.yaml", ["parts.yaml", "screws.csv"], [{"a": {"kind": "thing"}}, "b.ods"]])
def test_a_schema_takes_files_for_sections(value):
    data = {"machine": {"name": "x"}, "parts": value, "sheets": {"p": {"outline": "p.dxf", "holes": "holes.csv"}}}
    assert jsonschema.Draft202012Validator(SCHEMAS["design.schema.json"]).is_valid(data)


def test_every_short_form_is_in_the_schemas():
    from scantling.model.design import Design
    from scantling.model.workshop import Workshop

    seen, short = [Design, Workshop], set()
    for model in seen:
        for decorator in model.__pydantic_decorators__.model_validators.values():
            if decorator.info.mode == "before":
                short.add(model.__name__)
        for annotation in field_types(model).values():
            found = [annotation]
            for one in found:
                found += [arm for arm in getattr(one, "__args__", ()) if arm not in found]
                seen += [inner for inner in models(one) if inner not in seen]
    assert short == {*SHORT_FORMS, "Step", "Hole", "Spot"}  # a step and a spot take lists, a hole only refuses


@pytest.mark.parametrize(
    "name",
    [
        "M3x12 socket head screw",
        "M5x20 button head screw",
        "M4x16 countersunk screw",
        "M8x40 hexagon head screw",
        "1/4-20x3/4 in socket head screw",
        "M3 nut",
        "M3 lock nut",
        "M3 lock nut ISO 7040",
        "M6 thin nut",
        "1/4-20 nut",
        "M3 washer",
        "M3 large washer",
        "#6 washer",
        "1/4 in washer",
    ],
)
def test_names_of_standard_fasteners(name):
    assert is_standard_fastener(name)
    assert standard_part(name).id == name  # what is let through here can be built


@pytest.mark.parametrize("name", ["M3x13 socket head screw", "M7 nut", "M3 wing nut", "M3", "nut", "M3x12 screw", ""])
def test_names_of_no_standard_fastener(name):
    assert not is_standard_fastener(name)
    with pytest.raises(LookUpError):
        standard_part(name)


def test_a_design_of_texts():
    design = design_from_texts(
        {
            "machine": {"name": "one rod"},
            "parts": {"rod": {"kind": "rod", "diameter": "8 mm"}},
            "places": {"rod": {"reference": "rod", "quantity": 2}},
        },
        "try rods",
    )
    assert design.places["rod"].count == 2
    with pytest.raises(FaultsError, match=r"try rods: part rod: diameter: .* \[READ-23\]"):
        design_from_texts({"machine": {"name": "x"}, "parts": {"rod": {"kind": "rod", "diameter": "8"}}}, "try rods")


def test_a_lock_is_read_back(tmp_path):
    path = tmp_path / "plan.lock"
    content = {
        "format": "1",
        "copies": 2,
        "answers": {"part x-rod": "rod-8-soft", "screw of pen-clamp": "M3x16 socket head screw"},
        "pinned": {"part of x-rod": "rod-8-soft"},
        "packs": {"yard:3": 2},
        "files": {"design.yaml": "abc"},
        "proven": True,
    }
    path.write_text(json.dumps(content), encoding="utf-8")
    lock = read_lock(path)
    assert lock.answers == {
        Key("part", "x-rod"): "rod-8-soft",
        Key("screw", "pen-clamp"): "M3x16 socket head screw",
    }
    assert (lock.pinned, lock.proven, lock.copies) == ({Key("part", "x-rod"): "rod-8-soft"}, True, 2)


LOCKS = {
    "not JSON": ("{", "1:2"),
    "another format": ('{"format": "7"}', "1:1"),
    "no answers": ('{"format": "1", "copies": 1}', "1:1"),
    "an odd question": ('{"format": "1", "copies": 1, "answers": {"colour red": "x"}}', "1:1"),
    "odd copies": ('{"format": "1", "copies": "two", "answers": {}}', "1:1"),
    "a list": ("[]", "1:1"),
    "nested beyond reason": ("[" * 100_000, "1:1"),
}


@pytest.mark.parametrize("name", LOCKS)
def test_a_lock_that_no_plan_wrote(name, tmp_path):
    text, place = LOCKS[name]
    path = tmp_path / "plan.lock"
    path.write_text(text, encoding="utf-8")
    with pytest.raises(FaultsError) as told:
        read_lock(path)
    (fault,) = told.value.faults
    assert (fault.code, str(fault.where)) == ("READ-70", f"plan.lock:{place}")
    assert "the next plan writes a new one" in fault.mend


def test_circles_and_depths_of_large_graphs():
    ring = {number: [(number + 1) % 20_000] for number in range(20_000)}
    assert [len(circle) for circle in circles(ring)] == [20_000]
    chain = {number: [number - 1] for number in range(1, 20_000)}
    assert circles(chain) == []
    assert depths(chain)[19_999] == 19_998
    two = {"a": ["b"], "b": ["a", "c"], "c": ["d"], "d": ["c"], "e": ["a", "c"]}
    assert sorted(sorted(circle) for circle in circles(two)) == [["a", "b"], ["c", "d"]]


def test_sizes_that_no_choice_changes():
    design = read_project(PLOTTER, "village").design
    changed = design.model_copy(
        update={"sizes": {"a": "2 * b + 1 mm", "b": "min(c, 3 mm) / 2", "c": "1 in - 2 cm", "loop": "loop", "d": "x.y"}}
    )
    constants = Constants(changed)
    assert constants.value_mm("a + -b") == pytest.approx(2 * 1.5 + 1 - 1.5)
    assert constants.value_mm("max(a, c)") == pytest.approx(5.4)
    assert [constants.value_mm(text) for text in ("loop", "d + a", "nonsense", "a / 0", "((")] == [None] * 5
