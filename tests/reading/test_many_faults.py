"""All faults at once, of all files, in their order; and nothing that a mutation can do is ever a traceback."""

from __future__ import annotations

import copy
import random

import pytest
import yaml
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from scantling.errors import FaultsError
from scantling.reading.codes import CODES
from scantling.reading.project import read_project


def test_faults_of_every_stage_are_told_together(plotter):
    expected = [
        plotter.edit("design.yaml", "  revision: 3\n", "  revision: 3\n  «owner: me\n"),
        plotter.edit("design.yaml", "teeth: 16,", "teeth: «sixteen,"),
        plotter.edit("design.yaml", "  span: 300 mm ", "  span: 300 mm + «spam "),
        plotter.edit("design.yaml", "on: x-motor,", "on: «x-moter,"),
        plotter.edit("design.yaml", "after: [rods]", "after: [«rod]"),
        plotter.edit("workshops/village.yaml", "copies: 2", "copies: «0"),
        plotter.edit("workshops/village.yaml", "shipping: 5.90", "shipping: «-5.90"),
    ]
    plotter.edit("workshops/offers/village.csv", "yard,rod-8-soft,1,4.80", "yrad,rod-8-soft,0,4.80")
    plotter.edit("workshops/offers/village.csv", "yard,M3 washer,25,0.90", "yard,M3 washer,25,dear")
    faults = plotter.faults()
    places = [str(fault.where) for fault in faults]
    assert set(expected) <= set(places)
    offers = [(fault.where.line, fault.code) for fault in faults if fault.where.file.endswith(".csv")]
    assert offers == [(10, "READ-30"), (10, "READ-26"), (24, "READ-27")]
    assert len(faults) == 11 - 1
    assert [fault.where for fault in faults] == sorted(fault.where for fault in faults)


def test_what_was_refused_makes_no_further_noise(plotter):
    plotter.edit("design.yaml", "motor-17: {kind: motor,", "motor-17: {kind: moter,")
    plotter.edit("design.yaml", "  x-rod: {title: Guide rod,", "  x-rod: {title: Guide rod, colour: red,")
    plotter.edit("workshops/village.yaml", "shipping: 0", "shiping: 0")
    assert [fault.code for fault in plotter.faults()] == ["READ-25", "READ-20", "READ-20"]


def test_a_lost_file_makes_no_further_noise(plotter):
    text = (plotter.folder / "design.yaml").read_text(encoding="utf-8")
    start, end = text.index("parts:\n"), text.index("\nsizes:")
    plotter.write("design.yaml", text[:start] + "parts: [parts.yaml]\n" + text[end:])
    assert [fault.code for fault in plotter.faults()] == ["READ-01"]
    plotter.write("parts.yaml", "\n".join(line[2:] for line in text[start:end].split("\n")[1:]))
    assert plotter.faults() == ()
    plotter.append("parts.yaml", "\nbad: [\n")
    assert [fault.code for fault in plotter.faults()] == ["READ-06"]


def test_every_code_is_listed_once_and_used(pytestconfig):
    source = "".join(
        path.read_text(encoding="utf-8") for path in (pytestconfig.rootpath / "src/scantling/reading").rglob("*.py")
    )
    unused = [code for code in CODES if f'"{code[-2:]}"' not in source]
    assert unused == []
    assert all(title and title[0].islower() for title in CODES.values())


FILES = ("design.yaml", "workshops/village.yaml", "workshops/offers/village.csv", "drawings/panel.dxf")
PIECES = [
    b":",
    b"-",
    b"#",
    b"[",
    b"]",
    b"{",
    b"}",
    b",",
    b"'",
    b'"',
    b"\t",
    b"\n",
    b"\0",
    b"\xff",
    b"\xc3",
    b"&a",
    b"*a",
]
PIECES += [
    b"!!x",
    b"<<",
    b"---\n",
    b"%",
    b"|",
    b">",
    b"?",
    b"1e999",
    b"-1",
    b"0",
    b"nan",
    b"inf",
    b"\xe2\x80\xa8",
    b"/",
    b"..",
    b";",
]


def mutated(data: bytes, seed: int) -> bytes:
    """The bytes with a few pieces cut, doubled or put in."""
    chance = random.Random(seed)
    for _ in range(chance.randint(1, 4)):
        at = chance.randrange(len(data) + 1)
        to = min(len(data), at + chance.choice([0, 0, 1, 1, 3, 20]))
        piece = chance.choice([*PIECES, b"", data[at:to] * 2])
        data = data[:at] + piece + data[to:]
    return data


@pytest.mark.parametrize("file", FILES[:3])
@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture], derandomize=True)
@given(seed=st.integers(0, 10**6))
def test_a_mutation_is_read_or_refused(file, seed, plotter):
    path = plotter.folder / file
    good = path.read_bytes()
    try:
        path.write_bytes(mutated(good, seed))
        assert all(fault.what and fault.mend for fault in plotter.faults())
    finally:
        path.write_bytes(good)


@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture], derandomize=True)
@given(
    data=st.one_of(
        st.binary(max_size=300), st.text(alphabet="ab:-# \n{}[],'\"&*!|>%?@`0.", max_size=200).map(str.encode)
    )
)
def test_random_bytes_are_read_or_refused(data, plotter):
    for file in FILES[:3]:
        path = plotter.folder / file
        good = path.read_bytes()
        try:
            path.write_bytes(data)
            with pytest.raises(FaultsError):
                read_project(plotter.folder, "village")
        finally:
            path.write_bytes(good)


DUMPER = getattr(yaml, "CSafeDumper", yaml.SafeDumper)
ODD = [
    "",
    "0",
    "-1",
    "1e30",
    "8 mm",
    "all",
    "x-rod",
    "panel.thickness",
    "span + span",
    "panel to x-motor",
    "no",
    "50 %",
]
ODD += ["1/0 mm", "(((", "min()", "- -1 mm", "4: ", "a" * 5000, "½ in", "٣ mm", "..", ".face", "joint:", [], {}, ["a"]]
ODD += [[[]], [{}], {"a": "b"}, [{"a": ["b"]}], {"kind": []}, {"kind": "rod"}]


def with_odd_values(tree, seed: int) -> str:
    """The tree with a few values replaced by odd ones or by others of the tree, or left out."""
    chance = random.Random(seed)
    tree = copy.deepcopy(tree)
    for _ in range(chance.randint(1, 4)):
        spots = list(spots_of(tree))
        (holder, key), (other, there) = chance.choice(spots), chance.choice(spots)
        if chance.random() < 0.1:
            del holder[key]
        else:
            holder[key] = copy.deepcopy(other[there] if chance.random() < 0.2 else chance.choice(ODD))
    flow = chance.choice([True, False, None])
    return yaml.dump(tree, Dumper=DUMPER, allow_unicode=True, default_flow_style=flow)


def spots_of(tree):
    """Every place in a tree that holds a value."""
    if isinstance(tree, dict | list):
        for key in list(tree) if isinstance(tree, dict) else range(len(tree)):
            yield tree, key
            yield from spots_of(tree[key])


@pytest.mark.parametrize("file", FILES[:2])
@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture], derandomize=True)
@given(seed=st.integers(0, 10**6))
def test_an_odd_value_anywhere_is_read_or_refused(file, seed, plotter):
    path = plotter.folder / file
    good = path.read_text(encoding="utf-8")
    try:
        path.write_text(with_odd_values(yaml.load(good, Loader=yaml.BaseLoader), seed), encoding="utf-8")
        assert all(fault.what and fault.mend for fault in plotter.faults())
    finally:
        path.write_text(good, encoding="utf-8")


def test_deep_and_long_things_end_in_a_fault(plotter):
    chain = "".join(f"  s{n}: s{n - 1} + 1 mm\n" for n in range(1, 3000))
    plotter.edit("design.yaml", "  span: 300 mm ", f"  s0: 1 mm\n{chain}  span: 300 mm ")
    (fault,) = plotter.faults()
    assert (fault.code, fault.where.file) == ("READ-12", "design.yaml")
    assert "s100" in fault.what


def test_doubling_sizes_are_no_bomb(plotter):
    doubling = "".join(f"  s{n}: s{n - 1} + s{n - 1}\n" for n in range(1, 60))
    plotter.edit("design.yaml", "  span: 300 mm ", f"  s0: 1 mm\n{doubling}  span: 300 mm ")
    assert plotter.faults() == ()
