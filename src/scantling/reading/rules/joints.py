"""Joints and steps: stacks that are whole, screws that exist, steps that name what there is."""

from __future__ import annotations

import re

from scantling.errors import LookUpError, QuantityError, nearest
from scantling.model.design import Step
from scantling.model.joint import Into, Joint
from scantling.quantities import parse_count
from scantling.reading.scene import Scene
from scantling.tables.fastener_names import HEAD_WORDS, JOINT_SCREW
from scantling.tables.property_classes import property_class
from scantling.tables.screws import screw_lengths
from scantling.tables.threads import thread


def joints(scene: Scene) -> None:
    """Note joints that no screw could hold."""
    for name, joint in scene.design.joints.items():
        path = ("design", "joints", name)
        said_by = f"the joint {name!r}"
        _screw(scene, joint, said_by, *path, "screw")
        if not joint.through:
            mend = "write what the screw passes through, head side first, as in [washer, panel.thickness]"
            scene.add("43", f"{said_by} has no layers", mend, *path, "through")
        for number, layer in enumerate(joint.through):
            if sum(one is not None for one in (layer.size, layer.washer, layer.thickness_mm)) != 1:
                mend = "write one of size, washer and thickness"
                scene.add("43", f"{said_by}: layer {number + 1} is not one thing", mend, *path, "through", number)
        _into(scene, joint.into, said_by, *path, "into")
        if joint.count == 0:
            scene.add("26", f"{said_by} is made 0 times", "write 1 or more, or delete it", *path, "count")
        if joint.step is not None:
            scene.expect("steps", joint.step, said_by, *path, "step")
        _grade(scene, joint, said_by, *path, "grade")


def _screw(scene: Scene, joint: Joint, said_by: str, *path: str) -> None:
    found = JOINT_SCREW.fullmatch(" ".join(joint.screw.split()))
    if found is None:
        known = [f"{head} M3" for head in HEAD_WORDS]
        mend = f"{nearest(joint.screw, known)} Write head and thread; the length is chosen"
        scene.add("43", f"{said_by}: {joint.screw!r} is no screw", mend, *path)
        return
    try:
        thread(found["thread"])
        screw_lengths(HEAD_WORDS[found["head"]], found["thread"])
    except LookUpError as error:
        scene.add("40", f"{said_by}: {error.what}", error.mend, *path)


def _grade(scene: Scene, joint: Joint, said_by: str, *path: str) -> None:
    if joint.grade is None:
        return
    try:
        property_class(joint.grade)
    except LookUpError as error:
        scene.add("40", f"{said_by}: {joint.grade!r} is no property class of screws", str(error), *path)


def _into(scene: Scene, into: Into, said_by: str, *path: str) -> None:
    if (into.nut is None) == (into.place is None):
        mend = "write a nut (plain nut, lock nut, thin nut) or a place with a thread (y-motor.tapped)"
        scene.add("43", f"{said_by} goes into nothing that holds its thread", mend, *path)
    elif into.place is not None:
        scene.expect("places", into.place, said_by, *path)


def steps(scene: Scene) -> None:
    """Note steps that use or follow what is not described."""
    results = [step.yields for step in scene.design.steps.values() if step.yields]
    for name, step in scene.design.steps.items():
        path = ("design", "steps", name)
        for number, other in enumerate(step.after):
            scene.expect("steps", other, f"the step {name!r}", *path, "after", number)
        for number, result in enumerate(step.uses_results):
            if result not in results and scene.is_complete("steps"):
                what = f"the step {name!r} uses {result!r}, which no step yields"
                scene.add("30", what, nearest(result, results), *path, "uses-results", number)
        if step.yields and results.count(step.yields) > 1 and results.index(step.yields) != _first(scene, name):
            what = f"two steps yield {step.yields!r}"
            scene.add("08", what, "call the results differently", *path, "yields")
        _amounts(scene, name, step)


def _first(scene: Scene, name: str) -> int:
    """Return which of the steps with a result this one is."""
    return [other for other, step in scene.design.steps.items() if step.yields].index(name)


def _amounts(scene: Scene, name: str, step: Step) -> None:
    for section, key, amounts in (("places", "uses", step.uses), ("joints", "joints", step.joints)):
        for other, amount in amounts.items():
            path = ("design", "steps", name, key, other)
            scene.expect(section, other, f"the step {name!r}", *path)
            if not _is_amount(amount):
                what = f"the step {name!r}: {amount!r} of {other!r} is no amount"
                scene.add("23", what, "write a count of 1 or more, or all", *path)


def _is_amount(text: str) -> bool:
    if text == "all":
        return True
    try:
        return bool(re.fullmatch(r"[0-9]+", text.strip())) and parse_count(text) > 0
    except QuantityError:
        return False
