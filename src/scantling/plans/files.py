"""Every file of a plan, by its name in the folder; the same plan gives the same bytes."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

from scantling.model.build import Key
from scantling.plans.csv_text import csv_bytes
from scantling.plans.cutting import cut_table
from scantling.plans.digests import to_json
from scantling.plans.drilling import drill_table
from scantling.plans.file_names import file_names
from scantling.plans.lock import lock_bytes
from scantling.plans.loom import loom_table
from scantling.plans.orders import order_table
from scantling.plans.parts_list import parts_table
from scantling.plans.plan import Plan
from scantling.plans.plan_data import findings_data, plan_data, settings_data
from scantling.plans.printing import print_table
from scantling.plans.remembering import Remember, make_anew
from scantling.plans.steps import step_plans, steps_table
from scantling.plans.summary import summarise
from scantling.plans.summary_text import summary_text
from scantling.plans.templates import plan_template_files


def plan_files(plan: Plan, pins: Mapping[Key, str], remember: Remember = make_anew) -> dict[str, bytes]:
    """Return the files of a plan but for its book; what has nothing to say is left out.

    pins : the answers that were asked for    remember : gives templates that were drawn earlier
    Raises ``FaultsError`` where no true template can be made (PAPER-nn).
    """
    tables = {
        "parts-list.csv": parts_table(plan.parts),
        "cut-list.csv": cut_table(plan.bars),
        "drill-schedule.csv": drill_table(plan.drills),
        "print-list.csv": print_table(plan.prints),
        "loom.csv": loom_table(plan.loom, plan.loom_totals),
        "steps.csv": steps_table(step_plans(plan)),
    }
    files = {
        "summary.txt": summary_text(summarise(plan, pins)).encode(errors="replace"),
        "findings.json": _json(findings_data(plan)),
        "plan.json": _json(plan_data(plan, pins)),
        "plan.lock": lock_bytes(plan, pins),
        **{name: csv_bytes(rows) for name, rows in tables.items() if len(rows) > 1},
        **order_files(plan),
        **{f"templates/{name}": data for name, data in plan_template_files(plan, remember).items()},
    }
    if plan.settings:
        files["setting-up.json"] = _json(settings_data(plan))
    return dict(sorted(files.items()))


def order_files(plan: Plan) -> dict[str, bytes]:
    """Return one CSV for each order, ``orders/VENDOR.csv``."""
    home = plan.case.project.workshop.currency
    names = file_names([sheet.vendor for sheet in plan.orders], ".csv")
    tables: Sequence[list[list[str]]] = [order_table(sheet, home) for sheet in plan.orders]
    return {f"orders/{name}": csv_bytes(rows) for name, rows in zip(names, tables, strict=True)}


def _json(data: Any) -> bytes:
    return (to_json(data, indent=1) + "\n").encode(errors="replace")
