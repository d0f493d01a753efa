"""The answer of an end read back: which of the candidates it is, its seat, for whom, braking."""

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
from tests.support.verdicts_said import check_answer
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
    check_answer(data, end)
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
    for way, side in (("preload below", 1), ("preload above", -1)):
        for idle in (c for c in data["candidates"] if {one["code"] for one in c["vetoes"]} == {way}):
            assert side * idle["frequency"]["value"] > side * data["yardstick"]["frequency"]["value"]
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
    read = not chosen["pressure"] or report["fields"]["front.air_pressure"]["entered"]
    assert data["leave"] == (chosen["fitted"] and read)
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
    assert all(limit == round(limit) for limit in limits), span
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
