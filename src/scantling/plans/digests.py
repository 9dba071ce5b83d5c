"""Digests of plain data: equal data, equal digest, on every machine."""

from __future__ import annotations

import dataclasses
import hashlib
import json
from collections.abc import Mapping
from datetime import date
from enum import Enum
from fractions import Fraction
from math import isfinite
from typing import Any

from pydantic import BaseModel


def digest(data: Any) -> str:
    """Return a short digest of dataclasses, models, mappings, sequences and scalars."""
    return hashlib.sha256(to_json(data).encode()).hexdigest()[:16]


def to_json(data: Any, indent: int | None = None) -> str:
    """Return data as JSON text; fractions and dates as text, floats to twelve digits, keys in their given order."""
    return json.dumps(plain(data), indent=indent, ensure_ascii=False)


def plain(data: Any) -> Any:
    """Return data as JSON's own types."""
    if isinstance(data, Enum):
        return plain(data.value)
    if data is None or isinstance(data, (str, bool, int)):
        return data
    if isinstance(data, float):
        return float(f"{data:.12g}") if isfinite(data) else str(data)  # JSON has no infinity
    if isinstance(data, (Fraction, date)):
        return str(data)
    if isinstance(data, BaseModel):
        return plain(data.model_dump(by_alias=True, exclude_none=True))
    if dataclasses.is_dataclass(data) and not isinstance(data, type):
        return {field.name: plain(getattr(data, field.name)) for field in dataclasses.fields(data)}
    if isinstance(data, Mapping):
        return {_key(key): plain(value) for key, value in data.items()}
    if isinstance(data, (list, tuple)):
        return [plain(item) for item in data]
    raise TypeError(f"no plain form of {type(data).__name__}")


def _key(key: Any) -> str:
    return key if isinstance(key, str) else str(plain(key))
