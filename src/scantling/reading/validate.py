"""From a tree of texts to the model; whatever pydantic finds becomes a fault with its place and how to mend it."""

from __future__ import annotations

from functools import cache
from typing import Any

from pydantic import TypeAdapter, ValidationError
from pydantic_core import ErrorDetails

from scantling.errors import QuantityError, Where, nearest
from scantling.quantities import dimension, dimension_of
from scantling.reading.collecting import Faults
from scantling.reading.fields import classes_at, field_types, name_in_files
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
        self.annotation = annotation
        self.label = label
        self.faults = faults
        self.node, self.where, self.path = _walk(node, detail["loc"])
        self.holder = _walk(node, detail["loc"][:-1])[0]
        names = [step for step in self.path if isinstance(step, str)]
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
            self._kind(context)
        elif kind in _WANTED:
            self._shape(_WANTED[kind])
        else:
            self._other(kind)

    def _add(self, code: str, what: str, mend: str, where: Where | None = None) -> None:
        self.faults.add(code, f"{self.label}: {what}", mend, where or self.where)

    def _unknown_key(self) -> None:
        key = str(self.detail["loc"][-1])
        known = [name for model in classes_at(self.annotation, self.detail["loc"][:-1]) for name in field_types(model)]
        where = self.where if not isinstance(self.holder, Entries) else self.holder.keys.get(key, self.where)
        self._add("20", f"{key!r} is not a key here", nearest(key, (name for name in known if name != "id")), where)

    def _missing(self) -> None:
        last = self.detail["loc"][-1]
        if isinstance(last, int):
            self._add("22", f"{self.field} is a list with a value too few", "write as many values as are wanted")
            return
        self._add("21", f"{last!r} is missing", f"add {last}: {self._example(str(last))}")

    def _example(self, key: str) -> str:
        """Return how a value of a field is written, as far as its name tells."""
        for model in classes_at(self.annotation, self.detail["loc"][:-1]):
            for name, info in model.model_fields.items():
                quantity = dimension_of(name)
                if name_in_files(name, info) == key and quantity not in (None, "money"):
                    return dimension(str(quantity)).example
        return "…"

    def _value(self, error: Exception) -> None:
        prefix = f"{self.field}: " if self.field else ""
        if isinstance(error, QuantityError):
            self._add("23", prefix + error.what, error.mend)
        else:
            self._add("22", prefix + str(error), "write it as the manual shows")

    def _word(self, expected: str) -> None:
        words = [word.strip("' ") for word in expected.replace(" or ", ", ").split(",")]
        written = self.node.value if isinstance(self.node, Text) else NAMES[type(self.node)]
        mend = nearest(written, words) if len(words) > 1 else f"write {words[0]}"
        self._add("24", f"{self.field}: {written!r} is not a word for it", mend)

    def _kind(self, context: dict[str, Any]) -> None:
        name = str(context["discriminator"]).strip("'")
        tag = child_of(self.node, name)
        if tag is None:
            words = [word.strip("' ") for word in context.get("expected_tags", "").split(",") if word.strip()]
            known = f"one of {', '.join(words)}" if words else "its word"
            self._add("25", f"{name!r} is missing", f"add {name}: with {known}")
            return
        words = [word.strip("' ") for word in str(context.get("expected_tags", "")).split(",")]
        written = tag.value if isinstance(tag, Text) else NAMES[type(tag)]
        self._add("25", f"{written!r} is no {name}", nearest(written, words), tag.where)

    def _shape(self, wanted: str) -> None:
        prefix = f"{self.field}: " if self.field else ""
        self._add("22", f"{prefix}{NAMES[type(self.node)]} where {wanted} is wanted", _EXAMPLES[wanted])

    def _other(self, kind: str) -> None:
        if kind == "too_long":
            self._add("22", f"{self.field} is a list with a value too many", "write as many values as are wanted")
        else:
            self._add("22", f"{self.field}: {self.detail['msg']}", "write it as the manual shows")


def _walk(node: Node, loc: tuple[int | str, ...]) -> tuple[Node, Where, Path]:
    """Follow pydantic's path through the tree; its words for kinds and short forms lead nowhere and are passed over."""
    where, path = node.where, []
    for step in loc:
        child = child_of(node, step)
        if child is None:
            continue
        where = node.keys[step] if isinstance(node, Entries) and not isinstance(child, Text) else child.where  # type: ignore[index]
        node = child
        path.append(step)
    return node, where, tuple(path)
