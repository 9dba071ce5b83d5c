"""The front door for programs: the job from the first question to the plan, one module a phase.

Names are imported when they are first used, so that a small question loads no solver. Texts are given as a maker
writes them; results are the frozen objects that the command line shows.

>>> from scantling.api import try_one
>>> try_one("supply", {"power": "250 W", "load": "186 W", "headroom": "25 %"}).findings[0].verdict.value
'sound'
"""

from __future__ import annotations

import importlib
from typing import Any

NAMES = {
    "try_one": "scantling.api.trying",
    "Tried": "scantling.api.trying",
    "TRIALS": "scantling.api.trying",
    "inspect_files": "scantling.api.inspecting",
    "Inspected": "scantling.api.inspecting",
    "starting_files": "scantling.api.starting",
    "schema_files": "scantling.api.schemas",
    "open_design": "scantling.api.opening",
    "read_changes": "scantling.api.opening",
    "Session": "scantling.api.opening",
    "check_design": "scantling.api.checking",
    "stand_ins": "scantling.api.checking",
    "Plan": "scantling.api.checking",
    "compare_frame": "scantling.api.framing",
    "motion_maps": "scantling.api.mapping",
    "make_design_plan": "scantling.api.planning",
    "summary_of": "scantling.api.planning",
    "files_of_plan": "scantling.api.planning",
    "plan_json": "scantling.api.data",
    "plan_file": "scantling.api.alone",
    "Alone": "scantling.api.alone",
    "stand": "scantling.api.following",
    "whatif": "scantling.api.following",
    "Standing": "scantling.api.following",
    "Following": "scantling.api.following",
    "explain": "scantling.api.explaining",
    "local_parts": "scantling.api.ranging",
    "question": "scantling.api.asking",
    "why": "scantling.api.asking",
    "option_words": "scantling.api.asking",
}


def __getattr__(name: str) -> Any:
    """Return one of ``NAMES``, its module imported now."""
    if name not in NAMES:
        raise AttributeError(f"scantling.api has no {name!r}; it has {', '.join(NAMES)}")
    return getattr(importlib.import_module(NAMES[name]), name)


def __dir__() -> list[str]:
    """Return the names of the front door."""
    return sorted(NAMES)
