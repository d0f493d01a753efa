"""The sentence of an end's answer read back: which candidate it is, what is set, oil, what it misses, what holds an order up."""

from __future__ import annotations

import math
import re
from typing import Any

from tests.support.verdicts import agrees, numbers, stepped
from tests.support.verdicts_words import spring_said

Data = dict[str, Any]

# The answer of a coil spring in each of its forms: what is fitted, preload, gap and oil, and what is missed.
_SETTINGS = r"(?P<preload>\S+) mm preload(?:, gap (?P<gap>\S+) mm(?:: (?P<oil>[^;.]+))?)?"
ANSWERS = {
    "keep": rf"Keep (?:the (?P<rate>.+?) N/mm|what is in): {_SETTINGS}\.",
    "fit": rf"Fit (?P<rate>.+?) N/mm, {_SETTINGS}\.",
    "nearest": rf"Nothing on offer fits\. (?:The nearest is (?P<other>.+?) N/mm|What is in(?:, (?P<rate>.+?) N/mm,)? is the nearest) with {_SETTINGS}; (?P<missed>.+)\.",
    "open": rf"Can't choose a (?P<spring>fork|rear) spring yet(?:: (?P<cause>[^.]+))?\. (?:Keep (?:the (?P<rate>.+?)|what is in) for now and set the sag: {_SETTINGS}|What is in can't stay: it (?P<barred>.+))\.",
}


def check_answer(data: Data, end: str) -> None:
    """What the answer says is the candidate that stands beside it, and what holds an order up."""
    chosen, answer, verdict = data["chosen"], data["answer"], data["verdict"]
    if data["doubt"]:
        assert answer.endswith(f". {data['doubt']}"), answer
        answer = answer.removesuffix(f" {data['doubt']}")
        if data["doubt"].startswith("Don't order"):
            assert verdict in ("fit", "nearest"), answer
            assert not chosen["fitted"], answer
            assert not chosen["pressure"], answer
    found = data["as_found"]["setup"]
    if found is not None:
        assert chosen["fitted"] == math.isclose(stepped(chosen)["value"], stepped(found)["value"], rel_tol=1e-6)
    if chosen["pressure"]:
        _pressure(chosen, answer, verdict, data["leave"])
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


def _pressure(chosen: Data, answer: str, verdict: str, leave: bool) -> None:
    """An air spring is pumped, one that nobody read too; what goes into its main chamber is added, what comes out is taken out."""
    assert chosen["fitted"] or not leave
    start = {"keep": "Keep " if leave else "Pump to ", "fit": "Pump to ", "nearest": "No pressure fits. "}[verdict]
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
    """Add is above 0, take out below, and a leg whose oil rounds to nothing stays as it is."""
    whole = {side: round(part["value"]) for side, part in oil.items()}
    if words == "no oil to add":
        assert whole == {"left": 0, "right": 0}
        return
    alone = re.fullmatch(r"(add|take out) (\d+) ml (left|right), (left|right) leg as it is", words)
    if alone:
        sides = {alone[3]: (alone[1], alone[2])}
        assert alone[3] != alone[4]
        assert whole[alone[4]] == 0, (words, oil)
    else:
        told = re.fullmatch(r"(add|take out) (\d+) ml(?: a leg| left, (add |take out |)(\d+)(?: ml)? right)", words)
        assert told, words
        left = (told[1], told[2])
        sides = {"left": left, "right": left if told[4] is None else (told[3].strip() or told[1], told[4])}
    for side, (verb, text) in sides.items():
        value = oil[side]["value"]
        assert agrees(text, abs(value)), (words, oil)
        assert whole[side] != 0, (words, oil)
        assert verb == ("add" if value > 0 else "take out"), (words, oil)
