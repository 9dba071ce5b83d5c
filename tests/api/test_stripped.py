"""A design stripped to a random tenth, many times: every command still answers, or names what is missing.

What is dropped takes its mentions with it; what then cannot be read at all is dropped too, by the line that the fault
names. Nothing may come out of any command but an answer or a ``FaultsError`` whose every fault says where and how to
mend it.
"""

import json
import random
import re
import shutil
from pathlib import Path

import pytest

from scantling.api.asking import question, why
from scantling.api.checking import check_design
from scantling.api.data import following_data, json_text, plan_json, why_data
from scantling.api.following import consequence_groups, stand, whatif
from scantling.api.opening import open_design, start_build
from scantling.api.planning import files_of_plan, make_design_plan, summary_of
from scantling.errors import FaultsError
from scantling.model.design import Design
from scantling.reading.collecting import Faults
from scantling.reading.document import read_document
from scantling.reading.files import Folder
from scantling.reading.nodes import places, plain
from scantling.reading.yaml_nodes import read_yaml

EXAMPLES = Path(__file__).parents[2] / "examples"
KEYED = (
    "parts",
    "places",
    "mates",
    "axes",
    "joints",
    "sheets",
    "rails",
    "warmings",
    "frames",
    "chains",
    "steps",
    "settings",
)
NEEDED = {
    "kind",
    "reference",
    "part",
    "mesh",
    "meshes",
    "drive",
    "outline",
    "screw",
    "into",
    "at",
    "mass",
    "teeth",
    "profile",
}
WORD = re.compile(r"[A-Za-z0-9_][\w/-]*")
MOST_ROUNDS = 60


def tree_of(folder: Path) -> dict:
    """A design as plain texts, all its files put together."""
    faults = Faults()
    found = plain(read_document(folder / "design.yaml", Design, Folder(folder, faults, {}), faults).tree)
    assert not faults.found
    return found


def stripped(tree: dict, draw: random.Random, share: float) -> dict:
    """Keep about a share of all entries, and drop some fields of those that stay."""
    less = json.loads(json.dumps(tree))
    gone: set[str] = set()
    for section in KEYED:
        entries = less.get(section)
        if not isinstance(entries, dict):
            continue
        for name in list(entries):
            if section != "parts" and draw.random() > share:
                del entries[name]
                gone.add(name)
            elif isinstance(entries[name], dict):
                for field in list(entries[name]):
                    if field not in NEEDED and draw.random() < 0.3:
                        del entries[name][field]
    used = set(WORD.findall(json.dumps(less["places"])))
    for name in [name for name in less["parts"] if name not in used and less["parts"][name].get("kind") != "filament"]:
        del less["parts"][name]
    return without(less, gone)


def without(value, gone: set[str]):
    """Drop every list item and every field that mentions a dropped name."""
    if isinstance(value, dict):
        kept = {key: without(one, gone) for key, one in value.items() if key not in gone and not mentions(one, gone)}
        return {key: one for key, one in kept.items() if one not in ({}, [])}
    if isinstance(value, list):
        return [without(one, gone) for one in value if not mentions(one, gone)]
    return value


def mentions(value, gone: set[str]) -> bool:
    return isinstance(value, str) and any(word.partition(".")[0] in gone for word in re.split(r"[\s,:;()]+", value))


def written(tree: dict, folder: Path) -> dict[tuple[int, int], tuple]:
    """Write a design, one entry a line, and return which field stands where."""
    lines = []
    for section, entries in tree.items():
        if section in (*KEYED, "sizes") and isinstance(entries, dict):
            lines.append(f"{section}:")
            lines += [f"  {json.dumps(name)}: {json.dumps(entry)}" for name, entry in entries.items()]
        else:
            lines.append(f"{section}: {json.dumps(entries)}")
    text = "\n".join(lines) + "\n"
    (folder / "design.yaml").write_text(text, encoding="utf-8")
    found = read_yaml(text, "design.yaml", Faults())
    return {(where.line, where.column): path for path, where in places(found, ())}


def readable(tree: dict, folder: Path, workshop: Path):
    """Drop what the faults name until the design can be read; every fault must say where it is and how to mend it."""
    for _ in range(MOST_ROUNDS):
        where = written(tree, folder)
        try:
            return open_design(folder, str(workshop))
        except FaultsError as error:
            faults = error.faults
        assert all(fault.what and fault.mend and fault.code for fault in faults)
        assert all(fault.where.line for fault in faults if fault.where.file == "design.yaml")
        named = [path for fault in faults if (path := nearest_field(where, fault.where))]
        assert named, [str(fault) for fault in faults]
        for path in sorted(named, key=len, reverse=True):
            drop(tree, path)
    raise AssertionError("what the faults name was dropped, and still it cannot be read")


def nearest_field(where: dict[tuple[int, int], tuple], at) -> tuple | None:
    """The field that stands at a place or last before it on the same line."""
    before = [(column, path) for (line, column), path in where.items() if line == at.line and column <= at.column]
    return max(before, key=lambda pair: (pair[0], len(pair[1])))[1] if before else None


def drop(tree, path: tuple) -> None:
    """Drop a field, if it is still there; what it leaves empty goes with it."""
    *way, last = path
    holder = tree
    for step in way:
        inside = isinstance(holder, dict) and step in holder
        inside = inside or (isinstance(holder, list) and isinstance(step, int) and step < len(holder))
        if not inside:
            return
        holder = holder[step]
    if isinstance(holder, dict):
        holder.pop(last, None)
    elif isinstance(holder, list) and isinstance(last, int) and last < len(holder):
        del holder[last]
    if way and holder in ({}, []):
        drop(tree, tuple(way))


def ask_everything(session, draw: random.Random) -> None:
    """Call everything that a command calls; only faults may come out."""
    answered(lambda: plan_json(check_design(session)))
    answered(lambda: everything_of_plan(session))
    key = draw.choice(list(session.case.questions) or [None])
    if key is None:
        return
    answers = session.case.answers(key, start_build(session).as_dict())
    changes = {key: draw.choice(answers)} if answers else {}
    answered(lambda: follow(session, changes))
    if key.kind == "part" and session.has_offers:
        answered(
            lambda: [json_text(why_data(o)) for o in list(why(session, question(session, [key.subject]), 500))[1:]]
        )


def everything_of_plan(session):
    plan = make_design_plan(session)
    summary_of(plan)
    return files_of_plan(plan)


def follow(session, changes):
    for stage in whatif(stand(session), changes):
        json_text(following_data(stage))
        consequence_groups(stage, frozenset(), everything=False)


def answered(call) -> None:
    """Call something; where it cannot be done every fault must say what is wrong and how to mend it."""
    faults = ()
    try:
        call()
    except FaultsError as error:
        faults = error.faults
    assert all(fault.what and fault.mend for fault in faults)


def test_the_small_example_stripped_still_answers(tmp_path):
    asked = [strip_and_ask("plotter", seed, tmp_path / str(seed)) for seed in range(30)]
    assert sum(asked) >= 20  # else this would test nothing


@pytest.mark.parametrize("seed", range(6))
def test_the_large_example_stripped_to_a_tenth_still_answers(seed, tmp_path):
    assert strip_and_ask("alder", seed, tmp_path)


def strip_and_ask(example: str, seed: int, tmp_path: Path) -> bool:
    """Strip an example and ask all there is to ask; True where there was anything left to ask about."""
    draw = random.Random(seed)
    folder, shop = tmp_path / example, tmp_path / "shop"
    shutil.copytree(EXAMPLES / example, folder, ignore=shutil.ignore_patterns("out", "*.py", "workshops"))
    shutil.copytree(EXAMPLES / example / "workshops", shop)  # a shared one: it may sell what the design has no more
    share = draw.choice([0.2, 0.4, 0.6]) if example == "plotter" else 0.1
    session = readable(stripped(tree_of(folder), draw, share), folder, shop / "village.yaml")
    ask_everything(session, draw)
    return bool(session.case.questions)
