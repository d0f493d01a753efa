"""The answer of an end and the sentences under it, read back: what to fit, why, oil, seat, span, braking, attitude, how sure."""

from __future__ import annotations

import math
import re
from typing import Any

from tests.support.verdicts import (
    agrees,
    check_criteria,
    check_figures,
    check_problem,
    check_reasons,
    entered,
    numbers,
    rate_said,
    read,
    seat,
    stepped,
)

Data = dict[str, Any]


def check_end(report: Data, end: str) -> None:
    """Every verdict of one end."""
    data = report["ends"][end]
    assert data["state"] in ("ok", "none", "refused")
    assert (data["state"] == "ok") == (not data["problems"])
    for problem in data["problems"]:
        check_problem(problem)
    if data["state"] == "refused":
        return
    _candidates(report, end, data)
    for name in ("as_found", "tried"):
        part = data[name]
        if part is not None and part["setup"] is not None:
            check_figures(report, end, part["setup"])
        elif part is not None:
            check_problem(part["problem"])
    if data["braking"] is not None:
        _braking(report, data)
    if data["state"] == "none":
        _nothing_fits(data)
        return
    _answer(data, end)
    _oil(data)
    _why(data)
    _rubber(report, end, data)
    _seat(report, end, data)
    _span(report, data)
    if data["sure"] is not None:
        _sure(data)


def _candidates(report: Data, end: str, data: Data) -> None:
    """What is in, first; the others from soft to stiff; the steps either side of the choice on their own side of it."""
    rates = [stepped(c)["value"] for c in data["candidates"]]
    first = 1 if data["candidates"][0]["fitted"] else 0
    assert rates[first:] == sorted(rates[first:])
    assert not any(c["fitted"] for c in data["candidates"][1:])
    for candidate in data["candidates"]:
        check_figures(report, end, candidate)
        check_reasons(report, end, candidate)
        check_criteria(data, candidate)
    by_relation = {c["relation"]: stepped(c)["value"] for c in data["candidates"] if c["relation"] != "other"}
    if data["state"] == "ok":
        chosen = by_relation["chosen"]
        assert by_relation.get("one step softer", -math.inf) < chosen < by_relation.get("one step stiffer", math.inf)
        assert data["chosen"]["vetoes"] == [] or data["leave"]
    else:
        assert not by_relation
        assert all(c["vetoes"] for c in data["candidates"] if not c["fitted"])


def _nothing_fits(data: Data) -> None:
    """The nearest spring is one that is shown, and what is said of it is what stops it."""
    (problem,) = data["problems"]
    if problem["code"] == "air-spring":
        return
    said = re.search(r"The nearest, (\S+) (?:N/mm|bar), (.*)\.$", problem["message"])
    assert said
    near = [c for c in data["candidates"] if "; ".join(v["words"] for v in c["vetoes"]) == said[2]]
    assert any(rate_said(said[1], stepped(c)) for c in near), problem["message"]
    assert problem["way_out"]


STARTS = {"keep": "Keep ", "fit": "Fit ", "nearest": "Nothing on offer fits. The nearest is ", "open": "Can't choose a "}


def _answer(data: Data, end: str) -> None:
    """What is told to be built, part by part: rate or rates, preload, gap, each as its figure rounds."""
    chosen, answer, verdict = data["chosen"], data["answer"], data["verdict"]
    assert chosen["fitted"] or verdict != "keep", answer
    assert not chosen["fitted"] or verdict != "fit" or chosen["pressure"], answer
    if chosen["pressure"]:
        _pressure(chosen, answer, verdict)
        return
    assert answer.startswith(STARTS[verdict]), answer
    part = answer.removeprefix(STARTS[verdict])
    if verdict == "open":
        part = answer.partition("Keep " if chosen["fitted"] else "best guess so far ")[2]
        assert chosen["fitted"] or data["candidates"][0]["vetoes"], "what is in can stay, and is not kept"
    told = numbers(re.split(r": (?:add|take out|no oil)|;", part)[0])
    expected = [chosen["rate"]] if chosen["pair"] is None else [chosen["pair"]["left"], chosen["pair"]["right"], chosen["rate"]]
    if part.startswith("what is in"):
        assert chosen["fitted"], answer
        expected = []
    assert all(rate_said(text, rate) for text, rate in zip(told, expected, strict=False)), answer
    rest = [chosen["preload"], *([chosen["gap"]] if end == "front" else [])]
    assert [agrees(text, figure["value"]) for text, figure in zip(told[len(expected) :], rest, strict=True)] == [True] * len(rest), answer
    missed = [one["words"] for one in chosen["criteria"] if one["state"] == "outside"]
    assert verdict != "nearest" or (missed and all(words in answer for words in missed)), answer


def _pressure(chosen: Data, answer: str, verdict: str) -> None:
    """An air spring is pumped; what goes into its main chamber is added, what comes out is taken out."""
    told = numbers(answer)
    assert answer.startswith("Keep " if verdict == "keep" else "Pump to "), answer
    assert agrees(told[0], chosen["pressure"]["value"])
    if chosen["air_oil"] is not None and "main chamber:" in answer:
        assert agrees(told[1], abs(chosen["air_oil"]["value"]))
        assert ("add" in answer.partition("main chamber: ")[2].partition(" ml")[0]) == (chosen["air_oil"]["value"] > 0)
    if chosen["second_pressure"] is not None:
        assert agrees(numbers(answer.partition("second volume to ")[2])[0], chosen["second_pressure"]["value"])


def _oil(data: Data) -> None:
    """Add is above 0, take out below, and what rounds to nothing is not taken out."""
    oil = data["chosen"]["oil"]
    said = re.search(r": (no oil to add|(?:add|take out) \d+ ml(?: a leg| left.*? right))(?=[.;]|$)", data["answer"])
    assert (said is None) == (oil is None), data["answer"]
    if oil is None or said is None:
        return
    words = said[1]
    whole = {side: round(part["value"]) for side, part in oil.items()}
    if words == "no oil to add":
        assert whole == {"left": 0, "right": 0}
        return
    told = re.fullmatch(r"(add|take out) (\d+) ml(?: a leg| left, (add |take out |)(\d+)(?: ml)? right)", words)
    assert told, words
    left = (told[1], told[2])
    right = left if told[4] is None else (told[3].strip() or told[1], told[4])
    for (verb, text), side in ((left, "left"), (right, "right")):
        value = oil[side]["value"]
        assert agrees(text, abs(value)), (words, oil)
        assert whole[side] == 0 or verb == ("add" if value > 0 else "take out"), (words, oil)
        assert whole[side] != 0 or verb == "add" or told[3] == "", (words, oil)


def _why(data: Data) -> None:
    """The load against the standard rider's; the ride frequencies of the choice and of what came in, and what is usual."""
    chosen, found, (load, ride, *others) = data["chosen"], data["as_found"]["setup"], data["why"]
    standard, usual = data["standard"], data["windows"]["frequency"]
    extra = 100.0 * (data["load"]["aboard"]["value"] * standard["end_multiple"]["value"] / 1000.0 / standard["end_force"]["value"] - 1.0)
    if load.endswith("is the standard rider's."):
        assert abs(extra) <= 0.5 + 1e-9
    else:
        assert ("more" in load) == (extra > 0) != ("less" in load), load
        assert agrees(numbers(load)[0], abs(extra))
    told = numbers(ride)
    assert rate_said(told[0], stepped(chosen))
    assert agrees(told[1], chosen["frequency"]["value"])
    assert [math.isclose(read(text), usual[side], rel_tol=1e-5) for text, side in zip(told[-2:], ("low", "high"), strict=True)] == [True, True], ride
    assert data["yardstick"]["words"] in ride
    if "as it came in" in ride:
        assert rate_said(told[-4], stepped(found))
        assert agrees(told[-3], found["frequency"]["value"])
    for line in others:
        said = re.search(r"Free sag (\S+) mm is (under|over) the usual (\S+)-(\S+):", line)
        if said:
            free, low, high = (float(said[group]) for group in (1, 3, 4))
            assert agrees(said[1], data["chosen"]["free_sag"]["value"])
            assert free < low if said[2] == "under" else free > high, line


def _rubber(report: Data, end: str, data: Data) -> None:
    chosen = data["chosen"]
    lines = [line for line in data["why"] if "bump rubber" in line]
    assert bool(lines) == (chosen["landing_energy_rubber"] is not None)
    if lines:
        without, with_ = numbers(lines[0])
        assert agrees(without, chosen["landing_energy"]["value"])
        assert agrees(with_, chosen["landing_energy_rubber"]["value"])
    if lines and end == "front":
        left = entered(report, "front.travel") - entered(report, "front.rubber_length")
        touched = chosen["rider_sag"]["value"] > left
        assert any("touched at rider sag" in line for line in lines) == touched or abs(chosen["rider_sag"]["value"] - left) < 1e-6


def was_read(report: Data, path: str) -> bool:
    """True for a field that was measured or stated; those that are idle and empty are not told."""
    return path in report["fields"] and report["fields"][path]["origin"] in ("measured", "stated")


def _seat(report: Data, end: str, data: Data) -> None:
    """Longer, in and + are one way; shorter, out and - the other."""
    if data["chosen"]["pressure"]:  # pumped, not shimmed
        return
    turns, words = data["seat"]["turns"], data["seat"]["words"]
    if data["seat"]["move"] is None:  # nobody read the preload that it would start from
        assert turns is None
        assert agrees(numbers(words)[0], data["chosen"]["preload"]["value"])
        assert not was_read(report, f"{end}.preload") or report["fields"][f"{end}.preload_from"]["value"] == "lengths"
        return
    move = data["seat"]["move"]["value"]
    own = seat(report, end, data["chosen"])
    assert own is None or math.isclose(move, own, abs_tol=1e-6)
    inwards = re.search(r"\b(Add|in)\b", words) is not None
    outwards = re.search(r"\b(Cut|out)\b", words) is not None
    if "stay" in words:
        assert abs(move) <= 0.5 + 1e-9
        assert not inwards
        assert not outwards
        return
    assert (inwards, outwards) == (move > 0, move < 0), words
    told = numbers(words)
    assert agrees(told[0], abs(move))
    if turns is not None:
        pitch = entered(report, f"{end}.pitch")
        assert math.isclose(turns["value"], move / pitch, rel_tol=1e-9)
        assert agrees(told[1], abs(turns["value"]))


def _span(report: Data, data: Data) -> None:
    span, rider = data["holds_for"], entered(report, "rider.mass")
    if span is None:
        return
    told = numbers(span["words"])
    assert rate_said(told[0], stepped(data["chosen"]))
    limits = [limit for limit in (span["low"], span["high"]) if limit is not None]
    assert all(agrees(text, limit) for text, limit in zip(told[1 : 1 + len(limits)], limits, strict=True)) or not limits
    assert span["low"] is None or span["low"] <= rider + 1e-9
    assert span["high"] is None or span["high"] >= rider - 1e-9
    pattern = {(False, False): "for every rider", (False, True): "up to", (True, False): "in kit up", (True, True): " to "}
    assert pattern[(span["low"] is not None, span["high"] is not None)] in span["words"]


def _braking(report: Data, data: Data) -> None:
    braking = data["braking"]
    if braking["problem"] is not None:
        check_problem(braking["problem"])
        return
    setup = data["chosen"] if data["state"] == "ok" else data["as_found"]["setup"]
    stroke, added, left = (braking[key]["value"] for key in ("stroke", "added", "left"))
    assert math.isclose(stroke - added, setup["rider_sag"]["value"], abs_tol=1e-6)
    assert math.isclose(stroke + left, entered(report, "front.travel"), abs_tol=1e-6)
    assert left >= 0
    told = numbers(re.sub(r"m/s²", "", braking["words"]))
    figures = [braking[key]["value"] for key in ("deceleration", "stroke", "added", "left", "rear_tyre")]
    assert all(agrees(text, value) for text, value in zip(told, figures, strict=True)), braking["words"]
    assert figures[-1] > 0


def _sure(data: Data) -> None:
    """Tenths that add up; the choice with its own share, others with theirs; a span that holds what it says."""
    sure, chosen = data["sure"], stepped(data["chosen"])
    by_rate = {row["rate"]: row for row in sure["counts"]}
    mine = by_rate.get(chosen["value"], {"of_ten": 0})["of_ten"]
    assert sum(row["of_ten"] for row in sure["counts"]) <= 10
    assert all(abs(row["of_ten"] - 10.0 * row["count"] / sure["draws"]) <= 1.0 for row in sure["counts"])
    assert sum(row["count"] for row in sure["counts"]) + sure["undecided"] == sure["draws"]
    assert (data["verdict"] == "open") == (not sure["settled"])
    told = numbers(sure["words"])
    if data["chosen"]["pressure"]:
        assert sure["settled"]
        assert agrees(told[0], sure["low"])
        assert sure["low"] == sure["high"] or agrees(told[1], sure["high"])
    elif sure["settled"]:
        _settled(sure, chosen, mine, told)
    else:
        inside = sum(row["count"] for row in sure["counts"] if sure["low"] <= row["rate"] <= sure["high"])
        decided = sure["draws"] - sure["undecided"]
        assert inside >= 0.79 * (decided if "find a spring" in sure["words"] else sure["draws"]), (sure["words"], sure)
        assert ("find a spring" in sure["words"]) == (sure["undecided"] > 0)
        assert rate_said(told[0], {"value": sure["low"]})


def _settled(sure: Data, chosen: Data, mine: int, told: list[str]) -> None:
    """Half of the runs for the choice alone, or fewer and then it is told with its neighbours."""
    assert rate_said(told[0], chosen)
    near, alone = int(told[1]), "or a step from it" not in sure["words"]
    assert near == mine if alone else mine <= near <= 10, sure["words"]
    assert alone == (mine >= 5), sure["words"]
    shown = [row for row in sure["counts"] if row["of_ten"] and not (alone and row["rate"] == chosen["value"])]
    assert sorted(told[4::2]) == sorted(str(row["of_ten"]) for row in shown), sure["words"]
