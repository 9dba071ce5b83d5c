"""How long ``plan`` of the large example takes, from the command to the files."""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from functools import partial
from pathlib import Path

from measuring import Measure, quickest, run_python, took
from starting import CALL

ALDER = Path(__file__).resolve().parents[1] / "examples" / "alder"
RUNS = 3
WORDS = ("plan", str(ALDER), "--workshop", "village", "--copies", "4")


def measures() -> Iterator[Measure]:
    """Yield the plan of four copies without a cache, then with the one that an earlier run has filled."""
    with tempfile.TemporaryDirectory() as scratch:
        folder = Path(scratch)
        bare = quickest([took(partial(_plan, folder / f"bare-{n}", "")) for n in range(RUNS)])
        yield Measure("plan of Alder, four copies, without a cache", bare.wall_s, "s", 15.0, bare.note)
        cache = str(folder / "cache")
        _plan(folder / "first", cache)
        again = quickest([took(partial(_plan, folder / f"again-{n}", cache)) for n in range(RUNS)])
        yield Measure("the same again, with its cache", again.wall_s, "s", 6.0, again.note)
        pinned = took(lambda: _plan(folder / "pinned", cache, "y-motor=motor-full"))
        yield Measure("another part asked for, with the same cache", pinned.wall_s, "s", None, pinned.note)


def _plan(out: Path, cache: str, *asked: str) -> None:
    done = run_python("-c", CALL, *WORDS, *asked, "--out", str(out), cache=cache)
    if done.returncode not in (0, 1):
        raise SystemExit(f"plan ended with {done.returncode}: {done.stderr.decode(errors='replace')}")
