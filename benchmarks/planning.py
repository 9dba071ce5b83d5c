"""How long ``plan`` of the large example takes, from the command to the files."""

from __future__ import annotations

import tempfile
from collections.abc import Iterator
from pathlib import Path

from measuring import Measure, run_python, seconds
from starting import CALL

ALDER = Path(__file__).resolve().parents[1] / "examples" / "alder"
RUNS = 3
WORDS = ("plan", str(ALDER), "--workshop", "village", "--copies", "4")


def measures() -> Iterator[Measure]:
    """Yield the plan of four copies without a cache, then with the one that an earlier run has filled."""
    with tempfile.TemporaryDirectory() as scratch:
        folder = Path(scratch)
        bare_s = min(seconds(lambda n=n: _plan(folder / f"bare-{n}", "")) for n in range(RUNS))  # type: ignore[misc]
        yield Measure("plan of Alder, four copies, without a cache", bare_s, "s", 15.0)
        cache = str(folder / "cache")
        _plan(folder / "first", cache)
        again_s = min(seconds(lambda n=n: _plan(folder / f"again-{n}", cache)) for n in range(RUNS))  # type: ignore[misc]
        yield Measure("the same again, with its cache", again_s, "s", 6.0, f"{bare_s / again_s:.1f} times as quick")
        pinned_s = seconds(lambda: _plan(folder / "pinned", cache, "y-motor=motor-full"))
        yield Measure(
            "another part asked for, with the same cache", pinned_s, "s", None, "tables and most templates kept"
        )


def _plan(out: Path, cache: str, *asked: str) -> None:
    done = run_python("-c", CALL, *WORDS, *asked, "--out", str(out), cache=cache)
    if done.returncode not in (0, 1):
        raise SystemExit(f"plan ended with {done.returncode}: {done.stderr.decode(errors='replace')}")
