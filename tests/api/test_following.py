"""The stages of what-if: at once, complete, chosen anew; what cannot be had; what begins from the choice in force."""

from pathlib import Path

import pytest

from scantling.api.following import COSTLY, consequence_groups, stand, whatif, why_not
from scantling.api.opening import basis, open_design, outdated_answers, read_changes
from scantling.api.planning import files_of_plan, make_design_plan
from scantling.build.settings import LATE
from scantling.findings import Verdict

EXAMPLES = Path(__file__).parents[2] / "examples"


@pytest.fixture(scope="module")
def alder():
    """The large example, standing with its reference parts."""
    return stand(open_design(EXAMPLES / "alder", "village", 1))


@pytest.fixture
def plotter():
    """The small example, standing with its reference parts."""
    return stand(open_design(EXAMPLES / "plotter", "village"))


def changes(standing, *texts):
    return read_changes(standing.session, texts)


def test_costly_checks_wait_with_their_old_words_and_then_arrive(alder):
    at_once, complete = whatif(alder, changes(alder, "portal=ply-8"), anew=False)
    assert at_once.stage == "at once"
    assert at_once.waiting
    late = {setting.title for setting in at_once.before.settings if setting.group == LATE}
    assert {word.split()[0] for word in at_once.waiting if word not in late} <= COSTLY
    assert late <= set(at_once.waiting)
    old = {finding.key: finding for finding in at_once.before.findings if finding.code in COSTLY}
    assert {f.key: f for f in at_once.after.findings if f.code in COSTLY} == old
    assert complete.stage == "complete"
    assert complete.waiting == ()
    assert {f.key for f in complete.after.findings if f.code in COSTLY} == set(old)
    new = {c for c in complete.consequences if c not in at_once.consequences}
    new = {c for c in new if not any(title.endswith(c.what) or c.what in title for title in late)}
    assert {(c.topic.name, c.what.split()[0]) for c in new} <= {
        ("COST", "cost"),
        *(("FINDING", code) for code in COSTLY),
    }


def test_everything_else_is_kept(alder):
    (first,) = whatif_first(alder, "y-pulley=pulley-16")
    before, after = first.before.build.as_dict(), first.after.build.as_dict()
    differing = {key for key in before if before[key] != after[key]}
    assert {(key.kind, key.subject) for key in differing} == {("part", "y-pulley")}
    vendors = {sheet.vendor: {row.offer: row.packs for row in sheet.rows} for sheet in first.before.orders}
    for sheet in first.after.orders:
        changed = {row.part for row in sheet.rows if vendors[sheet.vendor].get(row.offer) != row.packs}
        assert changed <= {"pulley-16", "pulley-20", "belt-6"}  # no unrelated order is reshuffled


def whatif_first(standing, *texts):
    stages = whatif(standing, changes(standing, *texts), anew=False)
    return [next(iter(stages))]


def test_chosen_anew_tells_what_differs_further(plotter):
    *_, complete, anew = whatif(plotter, changes(plotter, "x-bushing=bushing-8-polymer"))
    assert anew.stage == "chosen anew"
    assert anew.after.choice.proven
    assert anew.after.totals.outlay <= complete.after.totals.outlay
    further = {(c.topic.name, c.subject) for c in anew.further}
    assert ("PART", "x-rod") in further  # soft rods will do with polymer bushings
    assert ("PART", "x-bushing") not in further  # that was asked for
    groups = consequence_groups(anew, frozenset(), everything=True)
    assert sum(len(group.subjects) for group in groups.groups) == len(anew.further)


def test_what_cannot_be_had_is_told_with_the_reason(plotter, tmp_path):
    session = plotter.session
    workshop = session.case.project.workshop
    offers = tuple(offer for offer in workshop.offers if offer.part != "ply-8")
    lacking = stand(with_offers(session, offers))
    at_once, _complete = whatif(lacking, changes(lacking, "panel=ply-8"), anew=False)
    assert at_once.after.verdict is Verdict.UNSOUND
    assert at_once.infeasible is not None
    assert any("ply-8 must be had" in line for line in why_not(at_once))
    (lost,) = [c for c in at_once.consequences if c.topic.name == "ORDER"]
    assert (lost.after, lost.weight) == ("cannot all be had here", "stops")


def with_offers(session, offers):
    from dataclasses import replace

    from scantling.api.opening import Session
    from scantling.build.case import Case

    project = session.case.project
    workshop = project.workshop.model_copy(update={"offers": offers})
    return Session(Case(replace(project, workshop=workshop)), session.copies)


def test_without_offers_it_follows_too_and_nothing_is_bought(plotter):
    bare = stand(with_offers(plotter.session, ()))
    stages = list(whatif(bare, changes(bare, "x-rod=rod-8-soft")))
    assert [stage.stage for stage in stages] == ["at once", "complete"]
    assert stages[0].consequences[0].weight == "stops"
    assert not [c for c in stages[0].consequences if c.topic.name in ("ORDER", "COST", "DATE")]


def test_it_begins_with_the_choice_in_force(tmp_path):
    session = open_design(EXAMPLES / "plotter", "village")
    assert basis(session) == "with the reference parts"
    plan = make_design_plan(session)
    lock = tmp_path / "plan.lock"
    lock.write_bytes(files_of_plan(plan)["plan.lock"])
    locked = open_design(EXAMPLES / "plotter", "village", lock=lock)
    assert outdated_answers(locked) == ()
    assert basis(locked) == f"with the parts chosen in {lock}"
    standing = stand(locked)
    assert standing.plan.build == plan.build
    assert standing.plan.purchase.cost_minor == plan.choice.cost_minor
    assert make_design_plan(locked).build == plan.build


def test_a_change_back_and_forth_leaves_nothing(plotter):
    """Asked of a plan in force again and again, the first answer is the same: nothing of a question stays behind."""
    asked = changes(plotter, "x-pulley=pulley-16", "panel=ply-8")
    first = list(whatif(plotter, asked, anew=False))
    list(whatif(plotter, changes(plotter, "x-motor=motor-14"), anew=False))
    again = list(whatif(plotter, asked, anew=False))
    assert [stage.consequences for stage in again] == [stage.consequences for stage in first]
    (nothing, *_) = whatif(plotter, {}, anew=False)
    assert nothing.consequences == ()
