"""How a figure is taken and shown: the median of several runs beside its target, ratios within one run."""

from __future__ import annotations

import os
import statistics
import subprocess
import sys
import time
from collections.abc import Callable, Sequence
from dataclasses import dataclass


@dataclass(frozen=True)
class Took:
    """How long something took, and for how much of it a processor worked on it: less where others wanted it too."""

    wall_s: float
    busy_s: float

    @property
    def note(self) -> str:
        """The working time in words."""
        return f"working {self.busy_s:.3g} s"


@dataclass(frozen=True)
class Measure:
    """One line of the report.

    target : the largest value that is meant; None where it is told only
    """

    name: str
    value: float
    unit: str
    target: float | None = None
    note: str = ""

    @property
    def is_met(self) -> bool:
        """True where there is no target or it is met."""
        return self.target is None or self.value <= self.target

    def line(self) -> str:
        """Return the measure as a line of the report."""
        value = f"{self.value:10.4g} {self.unit:4}"
        target = "" if self.target is None else f"at most {self.target:g} {self.unit}"
        word = "" if self.target is None else ("met" if self.is_met else "MISSED")
        return f"{self.name:58} {value} {target:18} {word:7} {self.note}".rstrip()


def _busy_s() -> float:
    """Working time of this process and of those that it has waited for."""
    times = os.times()
    return times.user + times.system + times.children_user + times.children_system


def took(call: Callable[[], object]) -> Took:
    """Return how long one call takes."""
    begun_s, busy_s = time.perf_counter(), _busy_s()
    call()
    return Took(time.perf_counter() - begun_s, _busy_s() - busy_s)


def quickest(runs: Sequence[Took]) -> Took:
    """Return the run that was disturbed least."""
    return min(runs, key=lambda run: run.wall_s)


def median_s(call: Callable[[], object], times: int) -> float:
    """Return the median of several calls."""
    return statistics.median(took(call).wall_s for _ in range(times))


def run_python(*arguments: str, cache: str = "") -> subprocess.CompletedProcess[bytes]:
    """Run this interpreter in a process of its own, with a folder for what is remembered, or none."""
    env = {**os.environ, "SCANTLING_CACHE": cache}
    return subprocess.run([sys.executable, *arguments], capture_output=True, check=False, env=env)


def load_note() -> str:
    """Return what else the machine is doing, where it can be known: a busy machine measures too much."""
    if not hasattr(os, "getloadavg"):
        return ""
    return f"{os.cpu_count()} cores, load {os.getloadavg()[0]:.1f} when this began"
