"""What the model says of its fields: names in files, which hold lists, which hold sizes, which kinds there are."""

from __future__ import annotations

from collections.abc import Iterator
from functools import cache
from types import NoneType, UnionType
from typing import Annotated, Any, Literal, Union, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from scantling.model.base import SIZE
from scantling.reading.nodes import Path

_TAGS = ("kind", "drive")


@cache
def field_types(model: type[BaseModel]) -> dict[str, Any]:
    """Return the annotation of every field by its name in files."""
    return {name_in_files(name, info): _whole(info) for name, info in model.model_fields.items()}


def name_in_files(name: str, info: FieldInfo) -> str:
    """Return what a field is called in files."""
    return info.alias or name


def _whole(info: FieldInfo) -> Any:
    """Return a field's annotation with the marks that pydantic keeps apart."""
    annotation: Any = info.annotation
    for mark in info.metadata:
        annotation = Annotated[annotation, mark]
    return annotation


@cache
def alternatives(annotation: Any) -> tuple[Any, ...]:
    """Return what a value may be, unions opened, marks and None left out."""
    origin = get_origin(annotation)
    if origin is Annotated:
        return alternatives(get_args(annotation)[0])
    if origin in (Union, UnionType):
        return tuple(found for arm in get_args(annotation) if arm is not NoneType for found in alternatives(arm))
    return (annotation,)


def is_size(annotation: Any) -> bool:
    """True for texts in the language of sizes."""
    if get_origin(annotation) is Annotated:
        return SIZE in get_args(annotation)[1:] or is_size(get_args(annotation)[0])
    if get_origin(annotation) in (Union, UnionType):
        return any(is_size(arm) for arm in get_args(annotation))
    return False


def models(annotation: Any) -> tuple[type[BaseModel], ...]:
    """Return the classes among the alternatives."""
    return tuple(one for one in alternatives(annotation) if isinstance(one, type) and issubclass(one, BaseModel))


def _element(annotation: Any, origin: type, place: int) -> Any:
    for one in alternatives(annotation):
        if get_origin(one) is origin:
            return get_args(one)[place]
    return None


def item_type(annotation: Any) -> Any:
    """Return what a list holds, None where it is no list."""
    return _element(annotation, tuple, 0)


def value_type(annotation: Any) -> Any:
    """Return what a group of free keys holds, None where it is none."""
    return _element(annotation, dict, 1)


def tag_of(model: type[BaseModel]) -> str | None:
    """Return the word that tells a class from its kin (``kind: rod``), None where it has no kin."""
    for name in _TAGS:
        info = model.model_fields.get(name)
        if info is not None and get_origin(info.annotation) is Literal:
            words = get_args(info.annotation)
            return str(words[0]) if len(words) == 1 else None
    return None


def untagged(annotation: Any, path: Path) -> tuple[Path, tuple[type[BaseModel], ...]]:
    """Return a path of pydantic without its words for kinds, and the classes of the group that it leads to."""
    here, steps = annotation, []
    classes = models(here)
    for step in path:
        tagged = [model for model in classes if len(classes) > 1 and tag_of(model) == step]
        if tagged:
            classes = (tagged[0],)
            continue
        steps.append(step)
        types = {name: kind for model in classes for name, kind in field_types(model).items()}
        here = types.get(str(step)) if classes else value_type(here) or item_type(here)
        classes = models(here) if here is not None else ()
    return tuple(steps), classes


def sizes_in(value: Any, annotation: Any, path: Path) -> Iterator[tuple[Path, str]]:
    """Yield every text in the language of sizes inside a value of the model, with its path in the files."""
    if isinstance(value, str):
        if is_size(annotation):
            yield path, value
    elif isinstance(value, BaseModel):
        for name, key, kind in _fields_with_sizes(type(value)):
            inner = getattr(value, name)
            if inner is not None:
                yield from sizes_in(inner, kind, (*path, key))
    elif isinstance(value, tuple):
        for place, item in enumerate(value):
            yield from sizes_in(item, item_type(annotation), (*path, place))
    elif isinstance(value, dict):
        for key, item in value.items():
            yield from sizes_in(item, value_type(annotation), (*path, key))


@cache
def _fields_with_sizes(model: type[BaseModel]) -> tuple[tuple[str, str, Any], ...]:
    """Return name, name in files and annotation of the fields that can hold a size somewhere."""
    fields = ((name, name_in_files(name, info), _whole(info)) for name, info in model.model_fields.items())
    return tuple((name, key, kind) for name, key, kind in fields if _may_hold_size(kind))


def _may_hold_size(annotation: Any) -> bool:
    if annotation is None:
        return False
    if is_size(annotation) or any(_fields_with_sizes(model) for model in models(annotation)):
        return True
    return _may_hold_size(item_type(annotation)) or _may_hold_size(value_type(annotation))
