"""Results of slow pure functions, kept under a digest of all that they are made from.

A function that may be kept takes and returns plain data (texts, numbers, lists, frozen dataclasses of such as
arguments), depends on nothing else, and lives in a room whose files are all the source it has. Its result is kept under
its name, the digest of that room's source, the versions of the libraries the room says it is made with, and its
arguments. So a check that asks for it stays pure, and a changed program, library or argument asks anew.
"""

from __future__ import annotations

import dataclasses
import hashlib
import importlib
import json
import pkgutil
from collections.abc import Callable
from functools import cache
from importlib.metadata import version
from importlib.util import find_spec
from typing import Any, ParamSpec, Protocol, TypeVar

P = ParamSpec("P")
T = TypeVar("T")


class Store(Protocol):
    """A place for bytes by name; a face opens it and hands it down."""

    def get(self, name: str) -> bytes | None:
        """Return what is stored under a name, or None."""

    def put(self, name: str, data: bytes) -> None:
        """Store bytes under a name."""


_MOST_KNOWN = 256  # results that a process has at hand; those asked for first go first
_KNOWN: dict[str, Any] = {}


class Keeper:
    """Keeps results in a store, and for the time of a run in any case; a store that is None only forgets sooner."""

    def __init__(self, store: Store | None = None) -> None:
        """Keep in ``store``."""
        self.store = store

    def kept(self, function: Callable[P, T], *args: P.args, **kwargs: P.kwargs) -> T:
        """Return what the function returns for these arguments, worked out now only where nothing whole is kept."""
        name = kept_name(function, args, kwargs)
        if name not in _KNOWN:
            found = self._found(name, lambda: function(*args, **kwargs))
            if len(_KNOWN) >= _MOST_KNOWN:
                del _KNOWN[next(iter(_KNOWN))]
            _KNOWN[name] = found
        kept: T = _KNOWN[name]
        return kept

    def _found(self, name: str, make: Callable[[], Any]) -> Any:
        text = unsealed(self.store, name)
        try:
            return json.loads(text) if text is not None else self._made(name, make)
        except ValueError:
            return self._made(name, make)

    def _made(self, name: str, make: Callable[[], Any]) -> Any:
        text = json.dumps(make(), separators=(",", ":"))
        sealed(self.store, name, text.encode())
        return json.loads(text)  # what is made now is the very thing that will be found later


def kept_name(function: Callable[..., Any], args: tuple[Any, ...], kwargs: dict[str, Any]) -> str:
    """Return the name under which a result is kept."""
    made_from = [source_digest(function.__module__), args, sorted(kwargs.items())]
    text = json.dumps([function.__module__, function.__qualname__, made_from], default=_plain, separators=(",", ":"))
    return f"{function.__name__.replace('_', '-')}-{hashlib.sha256(text.encode()).hexdigest()}"


@cache
def source_digest(module: str) -> str:
    """Return the digest of the source of all modules beside one, and of the libraries that they are made with."""
    room = importlib.import_module(module.rpartition(".")[0])
    seen = hashlib.sha256()
    for found in sorted(pkgutil.iter_modules(room.__path__, f"{room.__name__}."), key=lambda one: one.name):
        spec = find_spec(found.name)
        source = getattr(spec.loader, "get_source", lambda _: "")(found.name) if spec is not None else ""
        seen.update(f"{found.name}\n{source}\n".encode())
    for library in getattr(room, "MADE_WITH", ()):
        seen.update(f"{library} {version(library)}\n".encode())
    return seen.hexdigest()


def unsealed(store: Store | None, name: str) -> bytes | None:
    """Return what was stored under a name, if it is whole."""
    seal, _, data = ((store.get(name) if store is not None else None) or b"").partition(b"\n")
    return data if seal == _seal(data) else None


def sealed(store: Store | None, name: str, data: bytes) -> None:
    """Store bytes with a seal by which it is seen that they are whole."""
    if store is not None:
        store.put(name, _seal(data) + b"\n" + data)


def _seal(data: bytes) -> bytes:
    return hashlib.sha256(data).hexdigest().encode()


def _plain(value: Any) -> Any:
    if dataclasses.is_dataclass(value) and not isinstance(value, type):
        return {field.name: getattr(value, field.name) for field in dataclasses.fields(value)}
    raise TypeError(f"{value!r} is no plain data")
