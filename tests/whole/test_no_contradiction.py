"""No verdict contradicts another in sight: every verdict x axle x coil or air x known or assumed springs, walked sentence by sentence.

What a good tuner would not say in one breath: "not settled" and one rate; "keep" and "do not order"; for whom a spring is right
that is not chosen; a work order from a number that nobody read. Common practice, no source.
"""

import re
from itertools import product

import pytest

from calc.job import load
from calc.job.starter import start
from calc.report import report_of
from calc.report.letter import letter
from calc.report.text import report_text
from tests.support.documents import changed, demo
from tests.support.plain import read
from tests.support.verdicts_words import spring_said

SOLD = {"standard.fork_springs": "as sold", "standard.shock_spring": "as sold"}
UNKNOWN = {"standard.fork_springs": "unknown", "standard.shock_spring": "unknown"}
CHANGED = {"standard.fork_springs": "changed", "standard.shock_spring": "changed"}
UNREAD = {"front.rate": None, "rear.rate": None, "standard.fork_rate": "4.2 N/mm", "standard.shock_rate": "48 N/mm"}
READ = {"front.rate": "4.2 N/mm", "rear.rate": "48 N/mm"}
AIR = {
    "front.air": "air leg", "front.pump_loss": "0.1 bar", "front.air_piston": "34 mm", "front.air_volume": "400 ml",
    "front.balance_volume": "20 ml", "front.balance_rod": "14 mm", "front.balance_port": "6 mm", "front.air_end": "oil",
    "standard.air_pressure": "9 bar",
}  # fmt: skip
DRAINED = {"front.air_volume": "300 ml", "front.end_target": "multiple", "front.end_multiple": "5", "front.air_filled": "3 ml"}
# What is in closes its coils too early; what can be bought does not.
SHORT_ONE = {
    "front.free_length": "470 mm", "front.solid_length": "200 mm", "front.new_spring": "own", "front.new_free": "470 mm",
    "front.new_solid": "150 mm", "rear.free_length": "250 mm", "rear.solid_length": "150 mm", "rear.new_spring": "own",
    "rear.new_free": "250 mm", "rear.new_solid": "80 mm",
}  # fmt: skip
BLOCKED = {
    "front.free_length": "470 mm",
    "front.solid_length": "400 mm",
    "rear.free_length": "250 mm",
    "rear.solid_length": "150 mm",
}
VERDICTS = ("keep", "fit", "nearest", "open", "barred", "none")  # barred: open, and what is in cannot stay


def enduro(rider: int, *changes: dict) -> dict:
    """The riding and the rider's weight, and what else is entered."""
    return changed(start("enduro", f"{rider} kg"), {path: value for part in changes for path, value in part.items()})


CELLS = {
    ("keep", "coil", "known"): enduro(86, READ, SOLD),
    ("keep", "coil", "assumed"): enduro(86),
    ("fit", "coil", "known"): demo(),
    ("fit", "coil", "assumed"): demo(CHANGED | UNREAD),
    ("nearest", "coil", "known"): demo({"front.target_sag": "110 mm", "rear.target_sag": "30 mm"}),
    ("nearest", "coil", "assumed"): enduro(86, {"front.target_sag": "20 mm", "rear.target_sag": "30 mm"}),
    ("open", "coil", "known"): enduro(104, READ, UNKNOWN),
    ("open", "coil", "assumed"): enduro(104),
    ("barred", "coil", "known"): enduro(115, READ, UNKNOWN, SHORT_ONE),
    ("barred", "coil", "assumed"): enduro(104, SHORT_ONE),
    ("none", "coil", "known"): demo(BLOCKED),
    ("none", "coil", "assumed"): enduro(86, BLOCKED),
    ("keep", "air", "known"): demo(AIR | {"front.air_pressure": "7.1 bar"}),
    ("keep", "air", "assumed"): enduro(86, {"front.air": "air leg"}),
    ("fit", "air", "known"): demo(AIR | {"front.air_pressure": "9 bar"}),
    ("fit", "air", "assumed"): enduro(104, {"front.air": "air leg"}),
    ("nearest", "air", "known"): demo(AIR | {"front.air_pressure": "9 bar", "front.air_most": "6 bar"}),
    ("nearest", "air", "assumed"): demo(AIR | {"front.air_most": "6 bar"}),
    ("none", "air", "known"): demo(AIR | DRAINED | {"front.air_pressure": "9 bar"}),
    ("none", "air", "assumed"): demo(AIR | DRAINED | {"front.air_pressure": None}),
}  # fmt: skip
# A pressure is always told: pumping is undone in a minute.
NEVER = {(verdict, "air", known) for verdict in ("open", "barred") for known in ("known", "assumed")}
WALKED = [(cell, axle) for cell in CELLS for axle in (("front", "rear") if cell[1] == "coil" else ("front",))]
PAIRS = {"front.buy": "series-pairs"}


@pytest.fixture(scope="module")
def told():
    """Each cell's report, and as the command line prints it, worked out once."""
    found = {}
    for cell, document in CELLS.items():
        typed = report_of(load(document, 100))
        found[cell] = (read(typed), letter(typed), report_text(typed))
    return found


def sentences(end) -> list[str]:
    """Every sentence of an end that may speak of its choice."""
    lines = [end.get("answer", ""), *end.get("why", ()), *(problem["message"] for problem in end["problems"])]
    lines += [end[part]["words"] for part in ("sure", "holds_for", "seat") if end.get(part)]
    return [line for line in lines if line]


def test_every_combination_is_walked():
    assert set(product(VERDICTS, ("coil", "air"), ("known", "assumed"))) - NEVER == set(CELLS)


@pytest.mark.parametrize(("cell", "axle"), WALKED)
def test_each_job_is_the_combination_that_it_stands_for(told, cell, axle):
    end, (verdict, spring, known) = told[cell][0]["ends"][axle], cell
    assert end["state"] == ("none" if verdict == "none" else "ok")
    if verdict != "none":
        assert end["verdict"] == ("open" if verdict == "barred" else verdict)
        assert bool(end["chosen"]["pressure"]) == (spring == "air")
        assert end["chosen"]["fitted"] == (verdict in ("keep", "open"))
    path = "front.air_pressure" if spring == "air" else f"{axle}.rate"
    assert told[cell][0]["fields"][path]["entered"] == (known == "known")


@pytest.mark.parametrize(("cell", "axle"), WALKED)
def test_what_is_not_settled_names_no_spring_but_what_stays(told, cell, axle):
    end = told[cell][0]["ends"][axle]
    settled = end["sure"] is None or end["sure"]["settled"]
    assert settled == (end.get("verdict") != "open")
    if settled:
        assert not any("an't choose" in line for line in sentences(end))
        return
    spring = "fork spring" if axle == "front" else "rear spring"
    assert end["answer"].startswith(f"Can't choose a {spring} yet")
    assert re.match(r"From \S+ to \S+ N/mm in 8 of 10 runs", end["sure"]["words"])
    assert end["holds_for"] is None
    assert not re.search(r"\b(Fit|nearest|Nearest)\b|it would be", " ".join((end["answer"], *end["why"])))
    assert end["measure_next"][0]["result"] == "spring rate", "what the choice hangs on is asked for first"
    assert f"the {axle} sags" not in told[cell][1], "no sag to check of what is not chosen"
    if cell[0] == "barred":
        assert f"What is in can't stay: it {end['candidates'][0]['vetoes'][0]['words']}." in end["answer"]
        assert "Keep" not in end["answer"]
        assert "N/mm" not in end["answer"]
    else:
        assert "for now" in end["answer"]
        assert "Keep the" in end["answer"] or "Keep what is in" in end["answer"]


@pytest.mark.parametrize(("cell", "axle"), WALKED)
def test_keep_fit_and_nearest_say_one_thing_only(told, cell, axle):
    end = told[cell][0]["ends"][axle]
    verdict, lines = end.get("verdict"), sentences(end)
    read = cell[1] != "air" or cell[2] == "known"  # a pressure that nobody read is pumped to, the same one or another
    starts = {
        "keep": "Keep " if read else "Pump to ",
        "fit": ("Fit ", "Pump to "),
        "nearest": ("Nothing on offer fits. ", "No pressure fits. "),
        "open": "Can't choose ",
    }
    if verdict is None:
        assert "answer" not in end
        assert lines == [problem["message"] for problem in end["problems"]]
        assert "can be built" in lines[0]
        return
    assert end["answer"].startswith(starts[verdict])
    words = " ".join(lines)
    assert not re.search(r"\border\b", words), "nobody is told to order, nor not to"
    assert (verdict == "keep") >= ("Nearest to the standard" in words)
    assert (verdict in ("keep", "open")) == ("Keep " in words) or cell[0] == "barred" or "Keep" not in end["answer"]
    assert end["leave"] == (end["chosen"]["fitted"] and read)
    if end["leave"]:
        assert "as long as the fitted one" not in end["seat"]["words"], "it is the fitted one"
    if verdict == "nearest":
        outside = [one["words"] for one in end["chosen"]["criteria"] if one["state"] == "outside"]
        assert outside
        assert all(one in end["answer"] for one in outside)
        assert not any(line.startswith("With 5 mm less") for line in lines)
    if verdict in ("keep", "fit") and not end["chosen"]["pressure"]:
        assert all(one["state"] != "outside" for one in end["chosen"]["criteria"])


@pytest.mark.parametrize(("cell", "axle"), WALKED)
def test_for_whom_it_is_right_is_told_of_a_choice_that_fits_alone(told, cell, axle):
    end = told[cell][0]["ends"][axle]
    span, rider = end["holds_for"], told[cell][0]["fields"]["rider.mass"]["value"]
    assert (span is not None) == (end.get("verdict") in ("keep", "fit"))
    if span is None:
        assert not any("is right for" in line for line in sentences(end))
        return
    name = re.match(r"(.+?)(?: bar)? is right for", span["words"])[1]
    assert spring_said(name, end["chosen"]) or name == "What is fitted"
    assert (span["low"] or 0.0) <= rider <= (span["high"] or 1000.0)


@pytest.mark.parametrize(("cell", "axle"), WALKED)
def test_answer_count_ride_and_span_name_the_same_spring(told, cell, axle):
    end = told[cell][0]["ends"][axle]
    if end.get("verdict") in (None, "open") or end["chosen"]["pressure"]:
        return
    chosen = end["chosen"]
    names = [
        re.match(r"(.+?)(?: or a step from it)? in \d+ of 10 runs", end["sure"]["words"])[1],
        re.match(r"(.+?) rides at ", end["why"][1])[1],
    ]
    answer = re.search(r"(?:Keep the|Fit|nearest is) (.+?) N/mm", end["answer"])
    names += [answer[1]] if answer else []
    for name in names:
        assert spring_said(name, chosen) or (name == "What is fitted" and chosen["fitted"]), (name, names)


@pytest.mark.parametrize(("cell", "axle"), WALKED)
def test_a_rate_that_nobody_read_is_named_in_no_sentence_and_one_that_was_read_in_its_place(told, cell, axle):
    end = told[cell][0]["ends"][axle]
    if cell[1] == "air":
        return
    words = " ".join(re.sub(r"From \S+ to \S+ N/mm", "", line) for line in sentences(end))
    (own,) = (c["rate"]["text"] for c in end["candidates"] if c["fitted"])
    if cell[2] == "known":
        assert not re.search(r"[Ww]hat is (in(?! can't stay)|fitted)\b", words)
    elif "can be built" not in words:
        assert not re.search(rf"(?<![\d.]){re.escape(own)}(?![\d.]| Hz| mm| ×)", words), (own, words)


@pytest.mark.parametrize(("cell", "axle"), WALKED)
def test_a_work_order_starts_from_a_reading(told, cell, axle):
    report, end = told[cell][0], told[cell][0]["ends"][axle]
    if end.get("verdict") is None:
        return
    read_gap = all(report["fields"][f"front.gap_{side}"]["origin"] in ("measured", "stated") for side in ("left", "right"))
    words = " ".join(sentences(end))
    oil = re.search(r"\b(add|take out) \d+ ml (a leg|left|right)", words) is not None
    assert oil <= (axle == "front" and read_gap)
    assert (end["seat"]["move"] is not None) or "Nobody read the preload" in words
    if end["seat"]["move"] is None:
        assert not re.search(r"\b(Cut|Add) \d+ mm|Collar \d+ mm", words)


@pytest.mark.parametrize("cell", CELLS)
def test_the_letter_and_the_whole_text_say_what_the_ends_say(told, cell):
    report, short, long = told[cell]
    flat = [" ".join(text.split()) for text in (short, long)]
    for end in report["ends"].values():
        for text in flat:
            assert all(
                line in text
                for line in ([end["answer"], end["sure"]["words"]] if "answer" in end else [end["problems"][0]["message"]])
            )
        for line in sentences(end):
            assert line in flat[1], line


@pytest.mark.parametrize("verdict", ["keep", "fit", "open"])
def test_pairs_keep_all_of_this(verdict):
    """Half steps on offer: the verdict's own sentences still name both rates, and nothing else changes its mind."""
    document = changed({**CELLS[verdict, "coil", "known"], "front": dict(CELLS[verdict, "coil", "known"]["front"])}, PAIRS)
    end = read(report_of(load(document, 100)))["ends"]["front"]
    assert end["verdict"] == verdict
    pairs = {c["rate"]["text"]: (c["pair"]["left"]["text"], c["pair"]["right"]["text"]) for c in end["candidates"] if c["pair"]}
    assert pairs
    for line in sentences(end):
        bare = re.sub(r"\S+ left and \S+ right(?: \(mean \S+\))?", "", line)
        assert not any(re.search(rf"(?<![\d.]){re.escape(mean)}(?![\d.]| Hz| ×)", bare) for mean in pairs), line
