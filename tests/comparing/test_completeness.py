"""Nothing that a plan puts out can differ without a consequence; nothing follows from nothing; mirrored is mirrored."""

import dataclasses
import random

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from scantling.build.reference import carry_over, reference_build
from scantling.checks.all import run_checks
from scantling.choosing.choose import buy
from scantling.choosing.opened import open_build
from scantling.choosing.result import Purchase
from scantling.comparing.consequences import consequences
from scantling.comparing.fact import Topic
from scantling.plans.cutting import cut_table
from scantling.plans.drilling import drill_table
from scantling.plans.making import make_plan
from scantling.plans.orders import order_table
from scantling.plans.parts_list import parts_table
from scantling.plans.plan_data import settings_data
from scantling.plans.printing import print_table
from scantling.plans.steps import step_plans, steps_table

COPIES = 2


@pytest.fixture(scope="session")
def planned(case_of):
    """The plan of the reference parts with some answers changed, bought where it can be."""

    def plan(example, changes):
        case = case_of(example)
        build = carry_over(case, reference_build(case, COPIES), changes)
        bought = buy(open_build(case, build), build)
        purchase = bought if isinstance(bought, Purchase) else None
        return make_plan(case, build, run_checks(case, build), purchase)

    return plan


def changes_of(case, draw):
    """Some answers drawn at random: parts, ways of getting them, screws."""
    found = {}
    for key in draw(st.lists(st.sampled_from(case.questions), max_size=4, unique=True)):
        answers = case.answers(key, reference_build(case).as_dict() | found)
        found[key] = draw(st.sampled_from(answers))
    return found


def rows_by(table, *columns):
    """Rows of a table of text by the cells of some columns."""
    heading, *rows = table
    found = {}
    for row in rows:
        found.setdefault(tuple(row[heading.index(name)] for name in columns), []).append(tuple(row))
    return found


def outputs(plan):
    """Everything that is written out of a plan, by (topics in which it may be told, subject as it is told there)."""
    home = plan.case.project.workshop.currency
    found = {}

    def add(topics, subject, content):
        found[topics, subject] = content

    for key, setting in settings_data(plan).items():
        add((Topic.SETTING,), ("axis " + key.split(".")[1]) if key.startswith("axis.") else key, None)
        found[(Topic.SETTING,), key, "row"] = setting
    for finding in (*plan.findings, *plan.not_looked_at):
        add((Topic.FINDING,), f"{finding.subject} {finding.code}", dataclasses.astuple(finding))
    for (sheet,), rows in rows_by(drill_table(plan.drills), "panel").items():
        add((Topic.HOLE, Topic.DRAWING), sheet, rows)
    for sheet, digest in plan.drawings:
        add((Topic.DRAWING,), sheet, digest)
    for (part,), rows in rows_by(cut_table(plan.bars), "part").items():
        add((Topic.CUT,), part, sorted(row[1:] for row in rows))  # a bar's number is of the list, not of the bar
    for (place,), rows in rows_by(print_table(plan.prints), "place").items():
        add((Topic.PRINT,), place, rows)
    for (part,), rows in rows_by(parts_table(plan.parts), "reference").items():
        add((Topic.LIST,), part, [row[1:] for row in rows])
    for (step,), rows in rows_by(steps_table(step_plans(plan)), "step").items():
        add((Topic.STEP,), step, rows)
    for sheet in plan.orders:
        for row in order_table(sheet, home)[1:]:
            add((Topic.ORDER,), f"{sheet.vendor}: {row[2]}" if row[2] else sheet.vendor, None)
            found[(Topic.ORDER,), f"{sheet.vendor} {row[1]} {row[3]}", "row"] = row
    for field in dataclasses.fields(plan.totals) if plan.totals else ():
        add((Topic.COST,), field.name, getattr(plan.totals, field.name))
    return found


def told(found):
    """What consequences name: (topic, subject), and for findings and orders what tells them apart."""
    named = {(c.topic, c.subject) for c in found}
    named |= {(c.topic, f"{c.subject} {c.what.split()[0]}") for c in found if c.topic is Topic.FINDING}
    for c in found:
        if c.topic is Topic.ORDER:
            vendor, _, part = c.subject.partition(": ")
            named.add((c.topic, f"{vendor} {c.what}"))
            named.add((c.topic, f"{vendor} {c.what} {part}"))
    return named


def untold(before, after, found):
    """Outputs that differ and that no consequence tells of."""
    old, new, named = outputs(before), outputs(after), told(found)
    bought = (before.purchase is None) == (after.purchase is None)
    missing = []
    for key in {**old, **new}:
        topics, subject = key[0], key[1]
        if old.get(key) == new.get(key) or (not bought and {Topic.ORDER, Topic.COST} & set(topics)):
            continue
        if not bought and topics == (Topic.CUT,):
            continue
        if len(key) == 3:  # a row of settings or of an order
            subject = "axis " + subject.split(".")[1] if subject.startswith("axis.") else subject.partition(" ")[0]
            if not any(topic in topics and name.startswith(subject) for topic, name in named):
                missing.append(key)
        elif Topic.COST in topics:
            missing += [] if any(topic is Topic.COST for topic, _ in named) else [key]
        elif not any((topic, subject) in named for topic in topics):
            missing.append(key)
    return missing


@settings(max_examples=60)
@given(data=st.data())
def test_whatever_differs_is_told_and_nothing_else(data, case_of, planned):
    case = case_of("plotter")
    compare(planned("plotter", changes_of(case, data.draw)), planned("plotter", changes_of(case, data.draw)))


@pytest.mark.parametrize("seed", range(4))
def test_of_the_large_example_too(seed, case_of, planned):
    draw, case = random.Random(seed), case_of("alder")
    reference = reference_build(case).as_dict()
    answers = {key: case.answers(key, reference) for key in case.questions}
    open_parts = [key for key in case.questions if key.kind == "part" and len(answers[key]) > 1]
    others = [key for key in case.questions if key.kind != "part" and answers[key]]
    before = planned("alder", {})
    after = planned("alder", {key: draw.choice(answers[key]) for key in draw.sample(others, 2)})
    compare(before, after)
    changed = {key: answers[key][-1] for key in draw.sample(open_parts, 3)}
    told = len(compare(after, planned("alder", changed)))
    assert told > 5


def compare(before, after):
    """Every difference of two plans, after all that must hold of any two was seen to hold."""
    found = consequences(before, after)
    assert untold(before, after, found) == []
    assert before.build != after.build or found == ()
    mirrored = {(c.topic, c.subject, c.what): (c.after, c.before) for c in consequences(after, before)}
    assert {(c.topic, c.subject, c.what) for c in found} == set(mirrored)
    for c in found:
        if c.topic is not Topic.DRAWING:
            assert mirrored[c.topic, c.subject, c.what] == (c.before, c.after)
    return found


def test_the_test_sees_what_is_left_untold(case_of, planned):
    changes = {case_of("plotter").part_key("x-pulley"): "pulley-16"}
    before, after = planned("plotter", {}), planned("plotter", changes)
    found = consequences(before, after)
    assert untold(before, after, found) == []
    for topic in (Topic.SETTING, Topic.FINDING, Topic.CUT, Topic.LIST, Topic.STEP, Topic.ORDER, Topic.COST):
        assert untold(before, after, [c for c in found if c.topic is not topic]), topic


def test_what_cannot_be_bought_is_told_once(planned):
    before, after = planned("plotter", {}), planned("plotter", {})
    lost = dataclasses.replace(after, purchase=None, orders=(), totals=None, dates=None, bars=())
    (one,) = consequences(before, lost)
    assert (one.topic, one.after, one.weight) == (Topic.ORDER, "cannot all be had here", "stops")
    (back,) = consequences(lost, before)
    assert back.weight == "better"
