"""The JSON Schemas of all files."""

from __future__ import annotations

from scantling.plans.digests import to_json
from scantling.reading.schemas import json_schemas


def schema_files() -> dict[str, bytes]:
    """Return each schema by file name (``design.schema.json``)."""
    return {name: (to_json(schema, indent=2) + "\n").encode() for name, schema in sorted(json_schemas().items())}


def schema_text() -> str:
    """Return all schemas as one JSON object by file name."""
    return to_json(dict(sorted(json_schemas().items())), indent=2)
