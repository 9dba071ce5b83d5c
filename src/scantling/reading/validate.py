"""From a tree of texts to the model; whatever pydantic finds becomes a fault with its place and how to mend it."""

from __future__ import annotations

from functools import cache
from typing import Any

from pydantic import TypeAdapter, ValidationError
from pydantic_core import ErrorDetails

from scantling.errors import QuantityError, Where, nearest
from scantling.quantities import dimension, dimension_of
from scantling.reading.collecting import Faults
from scantling.reading.fields import field_types, name_in_files, tag_of, untagged
from scantling.reading.nodes import NAMES, Entries, Node, Path, Text, child_of, is_whole, plain

_WANTED = {
    "string_type": "a text",
    "model_type": "a group of keys",
    "model_attributes_type": "a group of keys",
    "dict_type": "a group of keys",
    "tuple_type": "a list",
    "list_type": "a list",
    "int_type": "a whole number",
    "bool_type": "yes or no",
    "date_type": "a date",
    "is_instance_of": "a quantity with its unit",
}
_EXAMPLES = {
    "a text": "write a text",
    "a group of keys": "write keys with their values, as in {key: value}",
    "a list": "write a list, as in [one, two]",
    "a whole number": "write a number such as 4",
    "yes or no": "write yes or no",
    "a date": "write year-month-day, as in 2026-03-31",
    "a quantity with its unit": "write a number with its unit, as in 8 mm",
}


@cache
def adapter(annotation: Any) -> TypeAdapter[Any]:
    """Return what reads values of a type."""
    return TypeAdapter(annotation)


def validated(node: Node, annotation: Any, label: str, faults: Faults, identifier: str | None = None) -> Any:
    """Return the value that a tree describes, None after a fault.

    label : what a fault calls it (``part rod-8``)    identifier : set as ``id`` where the type has one
    """
    if not is_whole(node):
        return None
    given = plain(node)
    if identifier is not None and isinstance(given, dict):
        given = {**given, "id": identifier}
    try:
        return adapter(annotation).validate_python(given)
    except ValidationError as error:
        for detail in error.errors(include_url=False):
            _Told(detail, node, annotation, label, faults).note()
        return None


class _Told:
    """One finding of pydantic in our words."""

    def __init__(self, detail: ErrorDetails, node: Node, annotation: Any, label: str, faults: Faults) -> None:
        self.detail = detail
        self.label = label
        self.faults = faults
        self.path, self.classes = untagged(annotation, detail["loc"])
        self.holder_classes = untagged(annotation, detail["loc"][:-1])[1]
        self.holder = _walk(node, self.path[:-1])[0]
        self.node, names = _walk(node, self.path)
        self.field = names[-1] if names else ""

    def note(self) -> None:
        """Add the fault."""
        kind = self.detail["type"]
        context = self.detail.get("ctx", {})
        if kind == "extra_forbidden":
            self._unknown_key()
        elif kind in ("missing", "missing_argument"):
            self._missing()
        elif kind == "value_error":
            self._value(context["error"])
        elif kind == "literal_error":
            self._word(str(context["expected"]))
        elif kind in ("union_tag_invalid", "union_tag_not_found"):
            self._kind(str(context["discriminator"]).strip("'"))
        elif kind in _WANTED:
            self._shape(_WANTED[kind])
        else:
            self._other(kind)

    def _add(self, code: str, what: str, mend: str, where: Where | None = None, *, with_field: bool = True) -> None:
        field = f"{self.field}: " if self.field and with_field else ""
        self.faults.add(code, f"{self.label}: {field}{what}", mend, where or self.node.where)

    def _unknown_key(self) -> None:
        key = str(self.path[-1])
        known = [name for model in self.holder_classes for name in field_types(model) if name != "id"]
        where = self.holder.keys.get(key) if isinstance(self.holder, Entries) else None
        self._add("20", f"{key!r} is not a key here", nearest(key, known), where, with_field=False)

    def _missing(self) -> None:
        last = self.path[-1]
        if isinstance(last, int):
            self._add("22", "a list with a value too few", "write as many values as are wanted")
        else:
            self._add("21", f"{last!r} is missing", f"add {last}: {self._example(last)}")

    def _example(self, key: str) -> str:
        """Return how a value of a field is written, as far as its name tells."""
        for model in self.holder_classes:
            for name, info in model.model_fields.items():
                quantity = dimension_of(name)
                if name_in_files(name, info) == key and quantity not in (None, "money"):
                    return dimension(str(quantity)).example
        return "…"

    def _value(self, error: Exception) -> None:
        if isinstance(error, QuantityError):
            self._add("23", error.what, error.mend)
        else:
            self._add("22", str(error), "write it as the manual shows")

    def _word(self, expected: str) -> None:
        words = [word.strip("' ") for word in expected.replace(" or ", ", ").split(",")]
        written = self.node.value if isinstance(self.node, Text) else NAMES[type(self.node)]
        mend = nearest(written, words) if len(words) > 1 else f"write {words[0]}"
        self._add("24", f"{written!r} is not a word for it", mend)

    def _kind(self, name: str) -> None:
        words = [str(tag_of(model)) for model in self.classes]
        tag = child_of(self.node, name)
        if tag is None:
            mend = f"add {name}: with one of {', '.join(words)}"
            self._add("25", f"{name!r} is missing", mend, with_field=False)
            return
        written = tag.value if isinstance(tag, Text) else NAMES[type(tag)]
        self._add("25", f"{written!r} is no {name}", nearest(written, words), tag.where, with_field=False)

    def _shape(self, wanted: str) -> None:
        self._add("22", f"{NAMES[type(self.node)]} where {wanted} is wanted", _EXAMPLES[wanted])

    def _other(self, kind: str) -> None:
        if kind == "too_long":
            self._add("22", "a list with a value too many", "write as many values as are wanted")
        else:
            self._add("22", str(self.detail["msg"]), "write it as the manual shows")


def _walk(node: Node, path: Path) -> tuple[Node, list[str]]:
    """Follow a path; return where it ends and the keys on the way. Steps that short forms add lead nowhere."""
    names: list[str] = []
    for step in path:
        child = child_of(node, step)
        if child is not None:
            node = child
            names += [step] if isinstance(step, str) else []
    return node, names
