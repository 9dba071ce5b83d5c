"""Each command once as it is meant: what it prints, its JSON, its exit code, its files."""

import json
import re

import pytest

from scantling.cli.cache import open_store
from scantling.cli.options import split_words

PLAN_KEYS = {
    "machine",
    "revision",
    "workshop",
    "currency",
    "copies",
    "verdict",
    "answers",
    "pinned",
    "choice",
    "infeasible",
}
PLAN_KEYS |= {"totals", "dates", "orders", "parts", "bars", "drills", "prints", "settings", "findings", "not_looked_at"}
PLAN_KEYS |= {"unlocking", "coverage", "purchase", "steps", "drawings", "loom", "loom_totals"}
FINDING_KEYS = {
    "code",
    "subject",
    "title",
    "verdict",
    "because",
    "source",
    "mend",
    "value",
    "low",
    "high",
    "unit",
    "side",
}
FINDING_KEYS |= {"limit", "limit_high", "margin", "missing", "assumed", "hangs"}
CONSEQUENCE_KEYS = {
    "topic",
    "subject",
    "what",
    "before",
    "after",
    "change",
    "weight",
    "because",
    "amount",
    "stays",
    "margins",
}


def test_new_begins_a_folder_and_says_what_to_type_next(call, tmp_path):
    done = call("new", tmp_path / "mine")
    assert done.code == 0
    assert (tmp_path / "mine" / "design.yaml").is_file()
    (following,) = re.findall(r"next: scantling (.*)", done.out)
    assert call(*following.split()).code == 0
    again = call("new", tmp_path / "mine")
    assert again.code == 2
    assert "exists already" in again.err


def test_new_as_json(call, tmp_path):
    done = call("new", tmp_path / "mine", "--json")
    assert set(done.data) == {"files", "next"}
    assert len(done.data["files"]) == 2


def test_try_answers_with_a_reason_and_as_json(call):
    words = ("try", "supply", "--power", "250 W", "--load", "186 W", "--headroom", "25 %")
    done = call(*words)
    assert done.code == 0
    assert "RAIL-01" in done.out
    assert "not a safety approval" in done.out
    data = call(*words, "--json").data
    assert set(data) == {"findings", "notes", "unasked"}
    assert set(data["findings"][0]) == FINDING_KEYS
    assert call("try", "supply", "--power", "200 W", "--load", "186 W", "--headroom", "25 %").code == 1


def test_try_tells_all_that_is_wrong_where_it_was_typed(call):
    done = call("try", "belt", "--teeth", "some", "--mass", "1,234.5 kg", "--motor", "3", "--json")
    assert done.code == 2
    faults = done.data["faults"]
    assert [fault["where"]["file"] for fault in faults] == ["--acceleration", "--mass", "--motor", "--teeth"]
    assert set(faults[0]) == {"code", "what", "mend", "where"}
    assert len(done.err.splitlines()) == 5


def test_inspect_shows_and_as_json(call, plotter):
    paths = (plotter / "drawings" / "panel.dxf", plotter / "meshes" / "carriage.stl")
    done = call("inspect", *paths)
    assert done.code == 0
    assert "names in capitals" in done.out
    data = call("inspect", *paths, "--json").data
    assert [one["file"] for one in data] == ["panel.dxf", "carriage.stl"]
    assert set(data[0]) == {"file", "kind", "size", "found", "notes", "entries"}
    assert set(data[1]["found"][0]) == {"what", "size", "where", "fit"}


@pytest.mark.parametrize(("change", "code", "word"), [((), 0, "HOLE-03"), (("x-rod=rod-8-soft",), 1, "ROD-03")])
def test_check_and_its_codes(call, plotter, change, code, word):
    done = call("check", plotter, "-w", "village", *change)
    assert done.code == code
    assert word in done.out
    assert "with the reference parts" in done.out
    assert "steps per mm  80" in done.out
    data = call("check", plotter, "-w", "village", *change, "--json").data
    assert set(data) == PLAN_KEYS
    assert data["verdict"] == ("marginal" if code == 0 else "unsound")  # holes made by hand: HOLE-03
    assert set(data["findings"][0]) == FINDING_KEYS


def test_check_of_each_stand_in(call, plotter):
    done = call("check", plotter, "-w", "village", "--stand-ins")
    assert done.code == 0
    assert re.search(r"rod-8-soft +unsound +ROD-03 axis x", done.out)
    data = call("check", plotter, "-w", "village", "--stand-ins", "--json").data
    assert {(one["place"], one["part"], one["verdict"]) for one in data["stand-ins"]} >= {
        ("x-rod", "rod-8-hardened", "sound"),
        ("x-rod", "rod-8-soft", "unsound"),
    }
    assert [one["part"] for one in data["stand-ins"] if one["in_force"] and one["place"] == "x-rod"] == [
        "rod-8-hardened"
    ]


def test_check_shows_everything_where_asked(call, plotter):
    brief, full = call("check", plotter, "-w", "village"), call("check", plotter, "-w", "village", "--all")
    assert "BELT-03" not in brief.out
    assert "BELT-03" in full.out
    assert "motor current, rms" in full.out


def test_the_folder_may_be_left_out(call, plotter, monkeypatch):
    monkeypatch.chdir(plotter)
    assert call("check", "-w", "village", "x-rod=rod-8-soft").code == 1
    assert call("check", "-w", "village").code == 0
    assert split_words(("x-rod=a", "b=c"))[1] == ("x-rod=a", "b=c")
    assert str(split_words(("some", "b=c"))[0]) == "some"
    assert split_words(("x-motor",), needed=True)[1] == ("x-motor",)
    assert split_words((str(plotter),), needed=True)[1] == ()


def test_plan_writes_its_files_whole_and_the_same_again(call, plotter, tmp_path):
    out = tmp_path / "out"
    done = call("plan", plotter, "-w", "village", "--out", out)
    assert done.code == 0
    assert "proven: no sound choice costs less" in done.out
    assert "outlay for 2 copies" in done.out
    first = {path.relative_to(out): path.read_bytes() for path in out.rglob("*") if path.is_file()}
    assert {"plan.lock", "plan.json", "parts-list.csv", "cut-list.csv", "plan.pdf"} <= {path.name for path in first}
    assert all(str(name) in done.out for name in ("plan.lock", "plan.pdf"))
    assert call("plan", plotter, "-w", "village", "--out", out).code == 0
    assert {path.relative_to(out): path.read_bytes() for path in out.rglob("*") if path.is_file()} == first


def test_plan_as_json_is_what_it_writes(call, plotter, tmp_path):
    done = call("plan", plotter, "-w", "village", "--out", tmp_path / "out", "--json")
    assert set(done.data) == PLAN_KEYS
    assert done.data == json.loads((tmp_path / "out" / "plan.json").read_text(encoding="utf-8"))
    assert done.data["choice"]["proven"]


def test_a_pinned_part_is_kept(call, plotter, tmp_path):
    done = call("plan", plotter, "-w", "village", "x-rod=rod-8-hardened", "--out", tmp_path / "out", "--json")
    assert done.data["pinned"] == {"part x-rod": "rod-8-hardened"}
    assert done.data["answers"]["part x-rod"] == "rod-8-hardened"


def test_pins_that_cannot_be_are_told_as_a_conflict(call, plotter, tmp_path):
    done = call(
        "plan", plotter, "-w", "village", "x-rod=rod-8-soft", "x-bushing=bushing-8-ball", "--out", tmp_path / "out"
    )
    assert done.code == 1
    assert "These demands stand against each other" in done.out
    assert "ROD-03" in done.out
    assert "nearest miss" in done.out


def test_bad_input_writes_nothing(call, plotter, tmp_path):
    design = plotter / "design.yaml"
    design.write_text(design.read_text(encoding="utf-8").replace("teeth: 20", "teeth: 20 mm"), encoding="utf-8")
    done = call("plan", plotter, "-w", "village", "--out", tmp_path / "out")
    assert done.code == 2
    assert re.match(r"design.yaml:\d+:\d+: ", done.err)
    assert not (tmp_path / "out").exists()


def test_a_makers_folder_is_not_overwritten(call, plotter, tmp_path):
    (tmp_path / "mine").mkdir()
    (tmp_path / "mine" / "notes.txt").write_text("mine")
    done = call("plan", plotter, "-w", "village", "--out", tmp_path / "mine")
    assert done.code == 2
    assert [path.name for path in (tmp_path / "mine").iterdir()] == ["notes.txt"]


def test_a_later_check_begins_with_the_choice_in_force(call, plotter):
    assert call("plan", plotter, "-w", "village").code == 0
    done = call("check", plotter, "-w", "village")
    assert "with the parts chosen in" in done.out
    assert call("check", plotter, "-w", "village", "--json").data["answers"]["part x-motor"] == "motor-14"


def test_a_lock_that_no_longer_fits_is_told(call, plotter):
    assert call("plan", plotter, "-w", "village").code == 0
    design = plotter / "design.yaml"
    text = design.read_text(encoding="utf-8").replace(
        "stand-ins: [motor-17-flat, motor-14]", "stand-ins: [motor-17-flat]"
    )
    design.write_text(re.sub(r"  motor-14:.*\n.*\n.*\n", "", text), encoding="utf-8")
    offers = plotter / "workshops" / "offers" / "village.csv"
    offers.write_text(re.sub(r"post,motor-14.*\n", "", offers.read_text(encoding="utf-8")), encoding="utf-8")
    done = call("check", plotter, "-w", "village")
    assert done.code == 0
    assert "no longer there, so as in the reference: part of x-motor" in " ".join(done.out.split())


def test_a_lock_that_is_named_must_be_there(call, plotter, tmp_path):
    assert call("check", plotter, "-w", "village", "--lock", tmp_path / "gone.lock").code == 2


def test_whatif_shows_stages_and_as_json(call, plotter):
    done = call("whatif", plotter, "-w", "village", "x-pulley=pulley-16")
    assert done.code == 0
    assert "Beginning with the reference parts" in done.out
    assert re.search(r"axis x: steps per mm +80 1/mm → 100 1/mm +\(\+20 1/mm\)", done.out)
    assert "With all else chosen anew" in done.out
    stages = call("whatif", plotter, "-w", "village", "x-pulley=pulley-16", "--json").data
    assert [stage["stage"] for stage in stages] == ["at once", "complete", "chosen anew"]
    keys = {"stage", "verdict before", "verdict after", "proven", "waiting", "consequences", "further"}
    assert all(set(stage) == keys for stage in stages)
    assert set(stages[0]["consequences"][0]) == CONSEQUENCE_KEYS


def test_whatif_tells_what_stops_the_machine_and_ends_with_one(call, plotter):
    done = call("whatif", plotter, "-w", "village", "x-rod=rod-8-soft", "--kept")
    assert done.code == 1
    assert done.out.index("stops the machine") < done.out.index("must be done otherwise")
    assert "grooves" in done.out
    assert "chosen anew" not in done.out


def test_whatif_shows_everything_where_asked(call, plotter):
    brief = call("whatif", plotter, "-w", "village", "x-pulley=pulley-16", "--kept")
    full = call("whatif", plotter, "-w", "village", "x-pulley=pulley-16", "--kept", "--all")
    assert "--all shows these" in brief.out
    assert "--all shows these" not in full.out
    assert len(full.out) > len(brief.out)


def test_whatif_wants_a_change(call, plotter):
    done = call("whatif", plotter, "-w", "village")
    assert done.code == 2
    assert "PLACE=PART" in done.err


def test_why_tells_every_answer_and_as_json(call, plotter):
    done = call("why", plotter, "-w", "village", "x-rod")
    assert done.code == 0
    assert re.search(r"rod-8-soft +chosen", done.out)
    assert re.search(r"rod-8-hardened +\d+\.\d\d EUR more", done.out)
    data = call("why", plotter, "-w", "village", "x-rod", "--json").data
    assert {one["answer"]: one["outcome"] for one in data} == {"rod-8-soft": "best", "rod-8-hardened": "costs"}
    assert set(data[0]) == {"question", "answer", "outcome", "extra minor", "forbidden by", "in words"}


def test_why_names_what_forbids_a_part(call, plotter):
    done = call("why", plotter, "-w", "village", "x-pulley")
    assert re.search(r"pulley-20-inch-bore\s+impossible: MATE-01 Shaft in bore, mate x-motor-in-pulley", done.out)


@pytest.mark.parametrize(
    ("words", "hint"),
    [
        (("x-rd",), "did you mean x-rod"),
        (("x-rod", "--enough", "much"), "--enough"),
        (("x-rod", "x-motor"), "one at a time"),
    ],
)
def test_why_says_what_is_wrong(call, plotter, words, hint):
    done = call("why", plotter, "-w", "village", *words)
    assert done.code == 2
    assert hint in done.err


def test_without_offers_plan_says_so_and_why_has_no_answer(call, plotter):
    assert "nothing is chosen or bought" in call("plan", plotter, "--out", plotter / "out" / "bare").out
    done = call("why", plotter, "x-rod")
    assert done.code == 2
    assert "nothing to buy from" in done.err


def test_schema_prints_and_writes(call, tmp_path):
    data = call("schema").data
    assert {"design.schema.json", "workshop.schema.json"} <= set(data)
    assert call("schema", "--json").data == data
    done = call("schema", "--out", tmp_path)
    assert done.code == 0
    assert json.loads((tmp_path / "design.schema.json").read_text(encoding="utf-8")) == data["design.schema.json"]


def test_a_list_alone_keeps_its_match_beside_it_and_never_overwrites_it(call, plotter, tmp_path):
    path = tmp_path / "list.csv"
    path.write_text("part,pieces\nmotor-17,2\nM3x10 socket head screw,8\n")
    shop = plotter / "workshops" / "village.yaml"
    done = call("plan", path, "-w", shop, "--out", tmp_path / "out")
    assert done.code == 0
    assert "outlay for 2" in done.out
    match = tmp_path / "list.match.yaml"
    kept = match.read_text() + "# mine\n"
    match.write_text(kept)
    assert call("plan", path, "-w", shop, "--out", tmp_path / "out", "--json").data["beside"] == []
    assert match.read_text() == kept


def test_a_drawing_alone(call, plotter, tmp_path):
    done = call("plan", plotter / "drawings" / "panel.dxf", "--out", tmp_path / "out")
    assert done.code == 0
    assert "90 × 90 mm" in done.out
    assert (tmp_path / "out" / "panel.pdf").is_file()
    assert call("plan", plotter / "drawings" / "panel.dxf", "x-rod=a", "--out", tmp_path / "out").code == 2
    assert call("plan", plotter, "-w", "village", "--bars", "1 mm", "1 mm", "1 mm").code == 2


def test_plain_where_there_is_no_terminal(call, plotter):
    for words in (("check", "--all"), ("whatif", "x-pulley=pulley-16", "--kept"), ("why", "x-motor")):
        command, *rest = words
        done = call(command, plotter, "-w", "village", *rest)
        assert "\x1b" not in done.out + done.err
        assert done.err == ""  # no progress either
        assert all(len(line) <= 120 and line == line.rstrip() for line in done.out.splitlines())


def test_colour_where_there_is_one(plotter, monkeypatch):
    import io
    import sys

    from scantling.cli.main import run

    class Terminal(io.StringIO):
        def isatty(self):
            return True

    monkeypatch.setenv("TERM", "xterm-256color")
    monkeypatch.setenv("COLUMNS", "80")
    monkeypatch.delenv("NO_COLOR", raising=False)
    terminal = Terminal()
    monkeypatch.setattr(sys, "stdout", terminal)
    assert run(["check", str(plotter), "-w", "village", "x-rod=rod-8-soft"]) == 1
    assert "\x1b[1;31m" in terminal.getvalue()  # bold red
    plain = re.sub(r"\x1b\[[0-9;]*m", "", terminal.getvalue())
    assert all(len(line) <= 80 for line in plain.splitlines())


def files_in(folder):
    return {path.relative_to(folder): path.read_bytes() for path in folder.rglob("*") if path.is_file()}


def test_the_cache_answers_the_same_and_may_be_damaged(call, plotter, tmp_path, monkeypatch):
    """Nothing remembered, all remembered, all that was remembered damaged: the same bytes."""
    words = ("plan", plotter, "-w", "village", "--json", "--out")
    bare = call(*words, tmp_path / "bare")
    cache = tmp_path / "cache"
    monkeypatch.setenv("SCANTLING_CACHE", str(cache))
    for name in ("filling", "filled"):
        assert call(*words, tmp_path / name).out == bare.out
        assert files_in(tmp_path / name) == files_in(tmp_path / "bare")
    kept = [path for path in cache.rglob("*") if path.is_file()]
    assert {path.name.partition("-")[0] for path in kept} >= {"tables", "choice", "template", "document"}
    for path in kept:
        path.write_bytes(path.read_bytes()[:-1] + b"?")
    assert call(*words, tmp_path / "damaged").out == bare.out
    assert files_in(tmp_path / "damaged") == files_in(tmp_path / "bare")
    monkeypatch.setenv("SCANTLING_CACHE", "")
    assert open_store() is None
