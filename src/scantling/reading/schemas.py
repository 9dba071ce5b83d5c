"""JSON Schemas (draft 2020-12) of all files, so that editors complete and check while a maker writes."""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

from pydantic import BaseModel, TypeAdapter
from pydantic.json_schema import GenerateJsonSchema

from scantling.model.design import Design
from scantling.model.workshop import Workshop
from scantling.reading.fields import field_types, item_type, models, value_type

DIALECT = "https://json-schema.org/draft/2020-12/schema"
_TEXT = {"type": ["string", "number"]}
_FILE = {
    "type": "string",
    "description": "a file: .yaml, .csv, .xlsx or .ods",
    "pattern": r"\.(ya?ml|csv|tsv|xlsx|ods)$",
}

# what a class also takes in place of a group of keys
SHORT_FORMS: dict[str, dict[str, Any]] = {
    "StandIn": {"type": "string", "description": "a part"},
    "Moved": {"anyOf": [{"type": "string", "description": "a place"}, {"$ref": "#/$defs/TypedMass"}]},
    "Layer": {"type": "string", "description": "washer, large washer, or a size", "examples": ["panel.thickness"]},
    "Into": {"type": "string", "description": "a nut or a thread", "examples": ["lock nut", "y-motor.tapped"]},
    "ChainTerm": {"type": "string", "pattern": "^[+-]", "examples": ["- rod.length"]},
    "Level": {"type": "string", "pattern": ":", "description": "packs: price", "examples": ["4: 8.60"]},
    "FramePanel": {"type": "string", "description": "a place of a sheet"},
    "Paper": {"type": "string", "examples": ["A4", "Letter"]},
}
# fields of a class that also take a list of names, meaning all of each
_LISTS_OF_NAMES = {"Step": ("uses", "joints")}
# fields of a class whose list of texts may be a single one without brackets
_ONE_OR_MORE = {"Spot": ("at",)}
_TAGS = ("kind", "drive")


def json_schemas() -> dict[str, dict[str, Any]]:
    """Return every schema by its file name: of a design, of a workshop, and of each section in a file of its own."""
    found = {
        "design.schema.json": _document(Design, "A design: all that every follower shares."),
        "workshop.schema.json": _document(Workshop, "A workshop: all that is local to one maker."),
    }
    for model in (Design, Workshop):
        for section, annotation in _sections(model):
            title = f"The section {section} in a file of its own."
            found[f"{section}.schema.json"] = _tidy(
                TypeAdapter(annotation).json_schema(schema_generator=_Schema), title
            )
    return found


class _Schema(GenerateJsonSchema):
    """Names of definitions as the classes are called."""

    schema_dialect = DIALECT


def _sections(model: type[BaseModel]) -> Iterator[tuple[str, Any]]:
    """Yield the fields that may stand in files of their own."""
    for name, annotation in field_types(model).items():
        if value_type(annotation) is not None or models(item_type(annotation)):
            yield name, annotation


def _document(model: type[BaseModel], title: str) -> dict[str, Any]:
    schema = _tidy(model.model_json_schema(schema_generator=_Schema), title)
    for name, _ in _sections(model):
        schema["properties"][name] = _or_files(schema["properties"][name])
    return schema


def _or_files(schema: dict[str, Any]) -> dict[str, Any]:
    """A section, or the files that hold it, or a list of both."""
    schema = {key: value for key, value in schema.items() if key != "default"}
    parts = schema["items"] if schema.get("type") == "array" else schema
    return {"anyOf": [schema, _FILE, {"type": "array", "items": {"anyOf": [_FILE, parts]}}]}


def _tidy(schema: dict[str, Any], title: str) -> dict[str, Any]:
    """Fit a schema to how files are written: texts may look like numbers, short forms are allowed, no ``id`` inside."""
    for name, definition in schema.get("$defs", {}).items():
        _definition(name, definition)
    _loosen(schema)
    for name, definition in list(schema.get("$defs", {}).items()):
        if name in SHORT_FORMS:
            schema["$defs"][name] = {"anyOf": [SHORT_FORMS[name], definition]}
    if "Sheet" in schema.get("$defs", {}):
        holes = schema["$defs"]["Sheet"]["properties"]
        holes["holes"] = _or_files(holes["holes"])
    return {"$schema": DIALECT, "title": title, **{key: value for key, value in schema.items() if key != "title"}}


def _definition(name: str, definition: dict[str, Any]) -> None:
    properties = definition.get("properties", {})
    if name != "Offer":
        properties.pop("id", None)
    for tag in _TAGS:
        if "const" in properties.get(tag, {}):
            definition["required"] = sorted({*definition.get("required", []), tag})
    for field in _LISTS_OF_NAMES.get(name, ()):
        names = {"type": "array", "items": {"type": "string"}, "description": "all pieces of each"}
        properties[field] = {"anyOf": [properties[field], names]}
    for field in _ONE_OR_MORE.get(name, ()):
        properties[field] = {"anyOf": [{"type": "string", "description": "one of them"}, properties[field]]}


def _loosen(schema: Any) -> None:
    """Editors take ``3`` for a number where we take every value for a text."""
    if isinstance(schema, list):
        for item in schema:
            _loosen(item)
    if not isinstance(schema, dict):
        return
    _without_null(schema)
    is_plain = schema.get("type") == "string" and not {"description", "format", "pattern", "enum", "const"} & set(
        schema
    )
    if is_plain:
        schema |= _TEXT
    if isinstance(schema.get("enum"), list):
        schema["enum"] = [*schema["enum"], *(int(word) for word in schema["enum"] if str(word).isdigit())]
        schema.pop("type", None)
    if str(schema.get("const", "")).isdigit():
        schema["enum"] = [schema["const"], int(schema.pop("const"))]
        schema.pop("type", None)
    for value in list(schema.values()):
        _loosen(value)


def _without_null(schema: dict[str, Any]) -> None:
    """What may be missing is left out in files, never written as nothing."""
    if "default" in schema and schema["default"] is None:
        del schema["default"]
    arms = schema.get("anyOf")
    if isinstance(arms, list) and {"type": "null"} in arms:
        left = [arm for arm in arms if arm != {"type": "null"}]
        del schema["anyOf"]
        schema |= {"anyOf": left} if len(left) > 1 else {**left[0], **schema}
