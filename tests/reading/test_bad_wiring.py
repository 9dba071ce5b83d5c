"""Wires, ports, mains and zones that name what is not there: one message each, at the value."""

from __future__ import annotations

import shutil
from pathlib import Path

import pytest

from scantling.errors import FaultsError
from scantling.reading.project import read_project

ALDER = Path(__file__).parents[2] / "examples" / "alder"

# name: (file, old, new, code, words)
CASES = {
    "wire to nowhere": ("loom.csv", "x-switch,board,x-switch,", "x-switch,board,q-switch,", "READ-30", "'q-switch'"),
    "wire of no wire": (
        "loom.csv",
        "board.in,feed-wire,650 mm,red",
        "board.in,contact,650 mm,red",
        "READ-39",
        "takes a wire",
    ),
    "end that is none": ("loom.csv", "red,1,feed-ferrule,,power", "red,1,board,,power", "READ-39", "takes a terminal"),
    "fuse that is none": ("loom.csv", "main,bed-fuse,2", "main,board,2", "READ-39", "takes a fuse"),
    "rail that is none": ("loom.csv", "bed-heater,main,bed-fuse", "bed-heater,side,bed-fuse", "READ-30", "'side'"),
    "no wires at all": (
        "loom.csv",
        "z-motor,motor-wire,650 mm,,2",
        "z-motor,motor-wire,650 mm,,0",
        "READ-26",
        "0 of it",
    ),
    "length that is none": (
        "loom.csv",
        "z-motor,motor-wire,650 mm,,2",
        "z-motor,motor-wire,y-cleer,,2",
        "READ-37",
        "y-cleer",
    ),
    "driver of no motor": ("design.yaml", "driver, for: x-motor", "driver, for: hot-fan", "READ-39", "takes a motor"),
    "port of no kind": ("design.yaml", "does: driver, for: x-motor", "does: engine, for: x-motor", "READ-24", "engine"),
    "want of no place": ("design.yaml", "fan, for: hot-fan", "fan, for: cold-fan", "READ-30", "'cold-fan'"),
    "board that is none": ("design.yaml", "    board: board\n", "    board: supply\n", "READ-39", "takes a board"),
    "inlet that is none": ("design.yaml", "    inlet: inlet\n", "    inlet: outlet\n", "READ-30", "'outlet'"),
    "mains fuse that is none": ("design.yaml", "mains-fuse: fuse", "mains-fuse: board", "READ-39", "takes a fuse"),
    "neighbour of no place": ("design.yaml", "near: [bed-insulation,", "near: [bed-wool,", "READ-30", "'bed-wool'"),
    "cut-out that is none": ("design.yaml", "cut-out: bed-cutoff", "cut-out: board", "READ-39", "takes a cut-out"),
    "wire without copper": (
        "parts/wiring.yaml",
        "area: 0.5 mm2, cores: 2",
        "cores: 2",
        "READ-44",
        "does not say its copper",
    ),
    "wire of both": (
        "parts/wiring.yaml",
        "area: 0.5 mm2, cores",
        "area: 0.5 mm2, gauge: 20, cores",
        "READ-44",
        "or twice",
    ),
    "gauge of no wire": ("parts/wiring.yaml", "area: 0.5 mm2, cores", "gauge: 55, cores", "READ-26", "gauge 55"),
    "negative current": (
        "parts/wiring.yaml",
        "trips: 128 °C, current: 10 A",
        "trips: 128 °C, current: -1 A",
        "READ-26",
        "-1 A",
    ),
    "port that carries nothing": (
        "parts/wiring.yaml",
        "name: bed, current: 10 A",
        "name: bed, current: 0 A",
        "READ-26",
        "0 A",
    ),
    "zone that is none": (
        "parts/printed.yaml",
        "infill: 30 %, zone: warm, sizes: {cap",
        "infill: 30 %, zone: wram, sizes: {cap",
        "READ-30",
        "'wram'",
    ),
}


def faults_after(folder: Path, file: str, old: str, new: str):
    """Change a copy of Alder; return what is wrong with it."""
    shutil.copytree(ALDER, folder / "alder")
    path = folder / "alder" / file
    text = path.read_text(encoding="utf-8")
    assert text.count(old) == 1, f"{old!r} stands {text.count(old)} times"
    path.write_text(text.replace(old, new), encoding="utf-8")
    try:
        read_project(folder / "alder", "village")
    except FaultsError as error:
        return error.faults
    return ()


@pytest.mark.parametrize("name", CASES)
def test_one_message_at_the_value(tmp_path, name):
    file, old, new, code, words = CASES[name]
    faults = [fault for fault in faults_after(tmp_path, file, old, new) if fault.code == code]
    assert faults, name
    assert any(words in fault.what for fault in faults), [fault.what for fault in faults]
    assert all(fault.where.file.endswith(file.rpartition("/")[2]) for fault in faults if words in fault.what)
    assert all(fault.mend for fault in faults)


def test_a_zone_that_says_nothing(tmp_path):
    found = faults_after(tmp_path, "design.yaml", "\nwarmings:\n", "\nzones:\n  attic: {title: Attic}\nwarmings:\n")
    assert [(fault.code, "neither what it is beside" in fault.what) for fault in found] == [("READ-44", True)]
