"""The sentences under an answer read back: why, ride frequencies, how sure; and whether a name is a spring's."""

from __future__ import annotations

import math
import re
from typing import Any

from tests.support.verdicts import agrees, numbers, rate_said, read, stepped

Data = dict[str, Any]
PAIR = re.compile(r"(\S+) left and (\S+) right(?: \(mean (\S+)\))?")


def spring_said(text: str, setup: Data) -> bool:
    """True where a name is a setup's: its pressure, its rate, or both rates of its pair."""
    if text in ("What is fitted", "what is fitted"):
        return False
    pair = PAIR.fullmatch(text.removeprefix("the pair of ").removeprefix("The pair of "))
    if setup["pressure"]:
        return agrees(text, setup["pressure"]["value"])
    if setup["pair"] is None:
        return pair is None and rate_said(text, setup["rate"])
    told = pair is not None and rate_said(pair[1], setup["pair"]["left"]) and rate_said(pair[2], setup["pair"]["right"])
    return told and (pair[3] is None or rate_said(pair[3], setup["rate"]))


def check_why(data: Data) -> None:
    """Load, ride, what would be nearer, what is missed, what another sag would choose; each said where it is so, and once."""
    chosen, why = data["chosen"], data["why"]
    standard = data["standard"]
    sold_for = 1000.0 * standard["end_force"]["value"] / standard["end_multiple"]["value"]
    extra = 100.0 * (data["load"]["aboard"]["value"] / sold_for - 1.0)
    load = re.fullmatch(r"Your load on the (fork|rear) is (?:(\S+) % (more|less) than )?the standard rider's\.", why[0])
    assert load, why[0]
    assert (load[2] is None) == (round(abs(extra), 9) <= 0.5) or abs(abs(extra) - 0.5) < 1e-6, why[0]
    assert load[2] is None or (agrees(load[2], abs(extra)) and load[3] == ("more" if extra > 0 else "less")), why[0]
    _ride(data, why[1])
    nearer = [line for line in why if line.startswith("Nearest to the standard")]
    assert len(nearer) == len(set(why) & set(nearer)) <= (data["verdict"] == "keep"), nearer
    missed = [one["words"] for one in chosen["short"]]
    for words in missed:
        assert why.count(f"{words[0].upper()}{words[1:]}.") == 1, (words, why)
    outside = {one["name"] for one in chosen["criteria"] if one["state"] == "outside"}
    said = {"rider sag": "ider sag", "free sag": "ree sag", "end of travel": "full travel"}
    for name in outside:
        assert any(said[name] in line or "it sags" in line for line in (*why[2:], data["answer"])), (name, why)
    for line in why:
        told = re.search(r"Free sag (\S+) mm is (under|over) the usual (\S+)-(\S+):", line)
        if told:
            free, low, high = (float(told[group]) for group in (1, 3, 4))
            assert agrees(told[1], chosen["free_sag"]["value"])
            assert free < low if told[2] == "under" else free > high, line
    other = [line for line in why if re.match(r"With 5 mm less", line)]
    assert len(other) <= 1
    assert not other or data["verdict"] in ("keep", "fit"), "what another sag would choose is told of a choice alone"


RIDE = re.compile(
    r"(?P<who>.+?) rides at (?P<own>\S+) Hz; (?P<by>.+?)"
    r"(?:; (?P<found>the (?P<found_name>.+?) as it came in|what is fitted) at (?P<found_rides>\S+) Hz)?"
    r"\. Usual for this riding: (?P<low>\S+)-(?P<high>\S+) Hz\."
)


def _ride(data: Data, line: str) -> None:
    """Ride frequencies: the choice's, what it is measured by, what came in; each of the setup that it names."""
    chosen, found, usual, yardstick = data["chosen"], data["as_found"]["setup"], data["windows"]["frequency"], data["yardstick"]
    told = RIDE.fullmatch(line)
    assert told, line
    who = told["who"].removesuffix(" bar")
    assert spring_said(who, chosen) or (who == "What is fitted" and chosen["fitted"]), line
    assert agrees(told["own"], chosen["frequency"]["value"])
    assert told["by"] == yardstick["words"]
    by = [read(text) for text in numbers(yardstick["words"].replace(" Hz", ""))]
    assert abs(by[-1] - yardstick["frequency"]["value"]) <= 0.005 + 1e-9
    source = yardstick["source"]
    assert source != "standard" or math.isclose(
        yardstick["frequency"]["value"], data["standard"]["frequency"]["value"], rel_tol=0.3
    )
    assert source != "softest usual" or math.isclose(yardstick["frequency"]["value"], usual["low"], rel_tol=1e-9)
    assert source != "stiffest usual" or math.isclose(yardstick["frequency"]["value"], usual["high"], rel_tol=1e-9)
    assert [read(told["low"]), read(told["high"])] == [float(f"{usual[side]:g}") for side in ("low", "high")]
    same = found is None or abs(stepped(found)["value"] - stepped(chosen)["value"]) <= 1e-6
    assert (told["found"] is None) == same, line
    if told["found_name"]:
        assert spring_said(told["found_name"].removesuffix(" bar").removeprefix("pair of "), found), line
    if told["found"]:
        assert agrees(told["found_rides"], found["frequency"]["value"])


def check_sure(data: Data) -> None:
    """Tenths that add up, a count that begins with the choice where it is settled, a span of rates where it is not."""
    sure, chosen = data["sure"], stepped(data["chosen"])
    assert sum(row["of_ten"] for row in sure["counts"]) <= 10
    assert all(abs(row["of_ten"] - 10.0 * row["count"] / sure["draws"]) <= 1.0 for row in sure["counts"])
    assert sum(row["count"] for row in sure["counts"]) + sure["undecided"] == sure["draws"]
    assert sure["words"].count("runs with your ± varied") == 1
    told, inside = numbers(sure["words"]), sum(row["count"] for row in sure["counts"] if sure["low"] <= row["rate"] <= sure["high"])
    decided = sure["draws"] - sure["undecided"]
    if data["chosen"]["pressure"]:
        assert sure["settled"]
        assert agrees(told[0], sure["low"])
        assert sure["low"] == sure["high"] or agrees(told[1], sure["high"])
        return
    if not sure["settled"]:
        names = {row["rate"]: row["text"] for row in sure["counts"]}
        span = re.match(r"From (.+) to (.+) N/mm in 8 of 10 runs", sure["words"])
        assert span, sure["words"]
        for text, rate in zip(span.groups(), (sure["low"], sure["high"]), strict=True):
            assert text == names[rate] or (names[rate] == "what is fitted" and _rate_named(text, rate)), sure["words"]
        assert inside >= 0.8 * decided - 1, (sure["words"], sure)
        assert ("find a spring" in sure["words"]) == (sure["undecided"] > 0)
        return
    mine = next((row for row in sure["counts"] if math.isclose(row["rate"], chosen["value"], rel_tol=1e-9)), None)
    what_is_in = [stepped(one)["value"] for one in data["candidates"] if one["fitted"]]
    kept = [row["count"] for row in sure["counts"] if row["rate"] in what_is_in]
    assert not kept or kept[0] <= (mine["count"] if mine else 0), "no spring goes for one that fewer runs choose"
    part = mine["of_ten"] if mine else 0
    rows = {row["text"]: row["of_ten"] for row in sure["counts"] if row["of_ten"] and row is not mine}
    if 2 * part >= 10:
        rest = ", ".join([f"{part} of 10 runs with your ± varied", *(f"{name} in {n}" for name, n in rows.items())])
        assert _same_parts(sure["words"], f"{_capital(mine['text'])} in {rest}."), (sure["words"], rest)
        return
    near = re.fullmatch(r"(.+?) or a step from it in (\d+) of 10 runs with your ± varied: (.+)\.", sure["words"])
    assert near, sure["words"]
    assert int(near[2]) >= 5
    shown = [f"{name} in {n}" for name, n in rows.items()] + ([f"{mine['text']} in {part}"] if part else [])
    assert sorted(near[3].split(", ")) == sorted(shown), sure["words"]


def _rate_named(text: str, rate: float) -> bool:
    """True where a name is a rate, or both rates of an unequal pair that it is the mean of, each as it is rounded."""
    pair = PAIR.fullmatch(text)
    if pair is None:
        return rate_said(text, {"value": rate})
    return abs(0.5 * (float(pair[1]) + float(pair[2])) - rate) <= 0.05


def _same_parts(one: str, other: str) -> bool:
    """Alike but for the order of what is counted beside the first."""
    first, *others = one.rstrip(".").split(", ")
    expected, *rest = other.rstrip(".").split(", ")
    return first == expected and sorted(others) == sorted(rest)


def _capital(words: str) -> str:
    return f"{words[0].upper()}{words[1:]}"
