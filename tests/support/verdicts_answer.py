"""The answer of an end read back: which of the candidates it is, what is set, oil, seat, for whom, braking."""

from __future__ import annotations

import math
import re
from typing import Any

from tests.support.verdicts import (
    agrees,
    check_criteria,
    check_figures,
    check_margins,
    check_problem,
    check_reasons,
    entered,
    numbers,
    seat,
    stepped,
)
from tests.support.verdicts_words import check_sure, check_why, spring_said

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
    check_why(data)
    _rubber(report, end, data)
    _seat(report, end, data)
    _span(report, data)
    if data["sure"] is not None:
        check_sure(data)


def _candidates(report: Data, end: str, data: Data) -> None:
    """What is in stands first, the others from soft to stiff; the choice is what the rule says of those that are shown."""
    first, judged = data["candidates"][0], []
    rates = [stepped(c)["value"] for c in data["candidates"] if not c["fitted"]]
    assert rates == sorted(rates)
    assert [c["fitted"] for c in data["candidates"][1:]] == [False] * (len(data["candidates"]) - 1)
    assert first["fitted"] or first["pressure"]
    for candidate in data["candidates"]:
        check_figures(report, end, candidate)
        check_reasons(report, end, candidate)
        judged.append((candidate, check_criteria(report, end, candidate)))
    check_margins(judged)
    for idle in (c for c in data["candidates"] if {one["code"] for one in c["vetoes"]} == {"preload below"}):
        assert idle["frequency"]["value"] > data["yardstick"]["frequency"]["value"]
    by_relation = {c["relation"]: stepped(c)["value"] for c in data["candidates"] if c["relation"] != "other"}
    if data["state"] == "ok":
        chosen = by_relation["chosen"]
        assert by_relation.get("one step softer", -math.inf) < chosen < by_relation.get("one step stiffer", math.inf)
        _chosen(report, end, data)
    else:
        assert not by_relation
        assert all(c["vetoes"] for c in data["candidates"])


def fits(candidate: Data) -> bool:
    """True where it can be built and is outside nothing; of an air spring the sag alone counts, its volumes decide the rest."""
    outside = {one["name"] for one in candidate["criteria"] if one["state"] == "outside"}
    return not candidate["vetoes"] and not (outside & {"rider sag"} if candidate["pressure"] else outside)


def _chosen(report: Data, end: str, data: Data) -> None:
    """Keep, fit, nearest or not yet, by the keys and criteria that are shown."""
    chosen, verdict = data["chosen"], data["verdict"]
    good = [c for c in data["candidates"] if fits(c)]
    assert chosen["vetoes"] == []
    assert data["leave"] == chosen["fitted"]
    assert (verdict == "open") == (data["sure"] is not None and not data["sure"]["settled"])
    if verdict == "fit":
        assert not chosen["fitted"]
        assert fits(chosen)
        assert chosen["key"] == min(c["key"] for c in good)
        own = next((c for c in good if c["fitted"]), None)
        assert own is None or abs(stepped(own)["value"] - stepped(chosen)["value"]) > _step(report, end, own) * (1 - 1e-9)
    if verdict == "keep":
        assert chosen["fitted"]
        assert fits(chosen)
    if verdict == "nearest":
        assert not good
    if verdict == "open":
        assert chosen["fitted"] or data["candidates"][0]["vetoes"]


def _step(report: Data, end: str, own: Data) -> float:
    """One step of what can be had: the gauge's, or the series'; a shelf's is the practice row's, at least 0.1 N/mm."""
    if own["pressure"]:
        return (
            entered(report, "front.air_step")
            if entered(report, "front.air_step") and report["fields"]["front.air_step"]["unit"] == "bar"
            else 0.0
        )
    step = entered(report, f"{end}.step")
    return step if step is not None else 0.0


def _nothing_fits(data: Data) -> None:
    """The nearest spring is one that is shown, and what is said of it is what bars it."""
    (problem,) = data["problems"]
    if problem["code"] == "air-spring":
        return
    said = re.search(r"The nearest, (.+?) (?:N/mm|bar), ", problem["message"])
    assert said
    words = problem["message"][said.end() : -1]
    near = min(data["candidates"], key=lambda c: c["key"])
    assert "; ".join(v["words"] for v in near["vetoes"]) == words
    assert spring_said(said[1], near), problem["message"]
    assert problem["way_out"]


# The answer of a coil spring in each of its forms: what is fitted, preload, gap and oil, and what is missed.
_SETTINGS = r"(?P<preload>\S+) mm preload(?:, gap (?P<gap>\S+) mm(?:: (?P<oil>[^;.]+))?)?"
ANSWERS = {
    "keep": rf"Keep (?:the (?P<rate>.+?) N/mm|what is in): {_SETTINGS}\.",
    "fit": rf"Fit (?P<rate>.+?) N/mm, {_SETTINGS}\.",
    "nearest": rf"Nothing on offer fits\. (?:The nearest is (?P<other>.+?) N/mm|What is in(?:, (?P<rate>.+?) N/mm,)? is the nearest) with {_SETTINGS}; (?P<missed>.+)\.",
    "open": rf"Can't choose a (?P<spring>fork|rear) spring yet(?:: (?P<cause>[^.]+))?\. (?:Keep (?:the (?P<rate>.+?)|what is in) for now and set the sag: {_SETTINGS}|What is in can't stay: it (?P<barred>.+))\.",
}


def _answer(data: Data, end: str) -> None:
    chosen, answer, verdict = data["chosen"], data["answer"], data["verdict"]
    found = data["as_found"]["setup"]
    if found is not None:
        assert chosen["fitted"] == math.isclose(stepped(chosen)["value"], stepped(found)["value"], rel_tol=1e-6)
    if chosen["pressure"]:
        _pressure(chosen, answer, verdict)
        return
    told = re.fullmatch(ANSWERS[verdict], answer)
    assert told, answer
    said = told.groupdict()
    if verdict == "open":
        assert said["spring"] == ("fork" if end == "front" else "rear")
        assert (said["barred"] is None) == chosen["fitted"], "what is in stays for now, unless it cannot be built"
        assert said["barred"] is None or said["barred"] == "; ".join(v["words"] for v in data["candidates"][0]["vetoes"])
    if verdict == "nearest":
        assert (said["other"] is None) == chosen["fitted"], answer
    rate = said["rate"] or said.get("other")
    if rate is not None:
        assert spring_said(rate, chosen), answer
    if said["preload"] is not None:
        assert agrees(said["preload"], chosen["preload"]["value"]), answer
        assert (said["gap"] is not None) == (end == "front"), answer
        assert said["gap"] is None or agrees(said["gap"], chosen["gap"]["value"]), answer
        assert (said["oil"] is None) == (chosen["oil"] is None), answer
        if said["oil"] is not None:
            _oil(said["oil"], chosen["oil"])
    missed = [one["words"] for one in chosen["criteria"] if one["state"] == "outside"]
    assert verdict != "nearest" or said["missed"] == ", ".join(missed), answer


def _pressure(chosen: Data, answer: str, verdict: str) -> None:
    """An air spring is pumped; what goes into its main chamber is added, what comes out is taken out."""
    start = {"keep": "Keep ", "fit": "Pump to ", "nearest": "No pressure fits. "}[verdict]
    assert answer.startswith(start), answer
    assert agrees(numbers(answer)[0], chosen["pressure"]["value"])
    if chosen["air_oil"] is not None and "main chamber:" in answer:
        assert agrees(numbers(answer)[1], abs(chosen["air_oil"]["value"]))
        assert ("add" in answer.partition("main chamber: ")[2].partition(" ml")[0]) == (chosen["air_oil"]["value"] > 0)
    if chosen["second_pressure"] is not None:
        assert agrees(numbers(answer.partition("second volume to ")[2])[0], chosen["second_pressure"]["value"])
    oil = re.search(r"gap (\S+) mm(?:: ([^;.]+))?", answer)
    if oil:
        assert agrees(oil[1], chosen["gap"]["value"])
        assert (oil[2] is None) == (chosen["oil"] is None)
        if oil[2] is not None:
            _oil(oil[2], chosen["oil"])


def _oil(words: str, oil: Data) -> None:
    """Add is above 0, take out below, and what rounds to nothing is not taken out."""
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
    """For whom a choice is right: told of a choice that fits, settled; it holds the rider, and says what it says."""
    span, rider = data["holds_for"], entered(report, "rider.mass")
    if span is None:
        return
    assert data["verdict"] in ("keep", "fit")
    assert fits(data["chosen"])
    told = re.fullmatch(
        r"(.+?)(?: bar)? is right for (every rider within half as much or 24 kg|riders (?:of up to|from|of) .+)\.", span["words"]
    )
    assert told, span["words"]
    assert spring_said(told[1], data["chosen"]) or told[1] == "What is fitted", span["words"]
    limits = [limit for limit in (span["low"], span["high"]) if limit is not None]
    assert not limits or [agrees(text, limit) for text, limit in zip(numbers(told[2]), limits, strict=True)] == [True] * len(limits)
    assert span["low"] is None or span["low"] <= rider + 1e-9
    assert span["high"] is None or span["high"] >= rider - 1e-9
    pattern = {(False, False): "every rider", (False, True): "up to", (True, False): "kg in kit up", (True, True): " to "}
    assert pattern[(span["low"] is not None, span["high"] is not None)] in span["words"]


def _braking(report: Data, data: Data) -> None:
    braking = data["braking"]
    if braking["problem"] is not None:
        check_problem(braking["problem"])
        return
    setup = data["chosen"] if data["state"] == "ok" else data["as_found"]["setup"]
    stroke, added, left = (braking[key]["value"] for key in ("stroke", "added", "left"))
    assert math.isclose(stroke - added, setup["rider_sag"]["value"], abs_tol=1e-6)
    full = data["curve"]["stroke"][-1]  # counted from hanging, where a balance chamber may hold the leg in
    assert math.isclose(stroke + left, full, abs_tol=0.006)
    assert full <= entered(report, "front.travel") + 0.006
    assert left >= 0
    told = numbers(re.sub(r"m/s²", "", braking["words"]))
    figures = [braking[key]["value"] for key in ("deceleration", "stroke", "added", "left", "rear_tyre")]
    assert all(agrees(text, value) for text, value in zip(told, figures, strict=True)), braking["words"]
    assert figures[-1] > 0
