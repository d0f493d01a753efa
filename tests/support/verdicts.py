"""Do the words of a report agree with its numbers: each sentence read back, and judged by the figures that stand beside it.

Nothing here calls the core: a sentence is parsed, and what it claims is worked out again from the report's data.
"""

from __future__ import annotations

import json
import math
import re
from collections.abc import Callable
from typing import Any

from calc.job.fields import FIELDS

Data = dict[str, Any]
NUMBER = re.compile(r"−?\d+(?:\.\d+)?")
NEVER = re.compile(r"\b(nan|inf|None)\b|−0(\.0+)?\b(?!\.\d)")
MARGIN = {"front": 5.0, "rear": 3.0}  # mm before the coils touch at full travel: common practice, no source


def numbers(words: str) -> list[str]:
    """Every number of a sentence, as it is written there."""
    return NUMBER.findall(words)


def read(text: str) -> float:
    return float(text.replace("−", "-"))


def agrees(text: str, value: float) -> bool:
    """True where a written number is a value rounded to as many decimals."""
    return abs(read(text) - value) <= 0.5 * 10.0 ** -len(text.partition(".")[2]) + 1e-6 * max(abs(value), 1.0)


def rate_said(text: str, rate: Data) -> bool:
    return agrees(text, rate["value"]) or abs(read(text) - rate["value"]) <= 0.0051


def stepped(setup: Data) -> Data:
    """What candidates are told apart by: an air spring's pressure, else the rate."""
    return setup["pressure"] or setup["rate"]


def finite(data: Any) -> bool:
    """True where every number of plain data is one, and no word of it stands for none."""
    try:
        text = json.dumps(data, allow_nan=False, ensure_ascii=False)
    except ValueError:
        return False
    return not (any(part in text for part in ("nan", "inf", "None", "−0")) and NEVER.search(text))


def entered(report: Data, path: str) -> float | None:
    """A quantity of the job in its field's unit; the random jobs type no other. None where it is idle or not known."""
    found = report["fields"].get(path)
    return found["value"] if found and found["applies"] else None


# What stands against a candidate: the numbers in its words by name, and how they must stand to one another.
REASONS: dict[str, tuple[tuple[str, ...], Callable[..., bool]]] = {
    "preload below": (("preload", "rider", "wanted"), lambda _, sags, wanted: sags < wanted),
    "preload above": (("preload", "rider", "wanted"), lambda _, sags, wanted: sags > wanted),
    "preload low": (("preload", "preload_min"), lambda has, limit: has < limit),
    "preload high": (("preload", "preload_max"), lambda has, limit: has > limit),
    "gap below": (("gap_exact", "gap"), lambda needs, limit: needs < limit),
    "gap above": (("gap_exact", "gap"), lambda needs, limit: needs > limit),
    "coil bind": (("bind", "margin"), lambda has, limit: has < limit),
    "too wide": (("wide", "spring_bore"), lambda wide, bore: wide >= bore),
    "too narrow": (("new_inside", "spring_core"), lambda inside, core: inside <= core),
    "pressure above": (("pressure", "most"), lambda needs, limit: needs > limit),
    "end unreachable": (("end", "end_wanted"), lambda reached, wanted: reached != wanted),
}


def known(report: Data, end: str, candidate: Data) -> dict[str, float | None]:
    """What the numbers that stand against a candidate must be, from the job's fields and the candidate's own figures."""
    data, free = report["ends"][end], report["ends"][end]["windows"]["free_sag"]
    sizes = ("preload_min", "preload_max", "gap_min", "gap_max", "spring_bore", "new_inside", "spring_core", "thread_left", "spacers")
    found = {key: entered(report, f"{end}.{key}") for key in sizes if f"{end}.{key}" in FIELDS}
    choices = {report["fields"][f"front.gap_{of}"]["value"] for of in ("read", "state")}
    for key in ("gap_min", "gap_max"):  # the trade's limits are told in the user's convention: their geometry has tests of its own
        if choices != {"out", "collapsed"} and not report["fields"][f"front.{key}"]["entered"]:
            found[key] = None
    found |= {"preload": candidate["preload"]["value"], "free": candidate["free_sag"]["value"], "margin": MARGIN[end]}
    found |= {"free_low": free["low"], "free_high": free["high"], "gap": candidate["gap"]["value"] if candidate["gap"] else None}
    bind, move = candidate["bind_clearance"], seat(report, end, candidate)
    found |= {"bind": None if bind is None else bind["value"], "move": move, "shorter": None if move is None else -move}
    found |= {"rider": candidate["rider_sag"]["value"], "end": candidate["end_multiple"]["value"], "energy": candidate["landing_energy"]["value"]}
    return found | {"wanted": data["targets"]["rider_sag"]["value"]}


def seat(report: Data, end: str, setup: Data) -> float | None:
    """How far spacer or collar moves: preload less preload as found, less what the new spring is longer by."""
    found = report["ends"][end]["as_found"]["setup"]
    if found is None:
        return None
    new, old = entered(report, f"{end}.new_free"), entered(report, f"{end}.free_length")
    longer = new - old if new is not None and old is not None and not setup["fitted"] and report["fields"][f"{end}.free_length"]["entered"] else 0.0
    return setup["preload"]["value"] - found["preload"]["value"] - longer


def check_reasons(report: Data, end: str, candidate: Data) -> None:
    """As it is written each number stands to the other as its words say; each is its own figure; and none that must be is left out."""
    facts = known(report, end, candidate)
    against = {one["code"]: one["words"] for one in (*candidate["vetoes"], *candidate["short"])}
    for code, words in against.items():
        if code not in REASONS:
            continue
        said, (names, holds) = numbers(words), REASONS[code]
        if " J to full travel" in words:  # an energy was asked for
            names = ("energy", "energy_wanted")
        assert len(said) == len(names), words
        assert holds(*map(read, said)), words
        for text, name in zip(said, names, strict=True):
            if facts.get(name) is not None:
                assert agrees(text, facts[name]), (words, name, facts[name])
    bind, margin = facts["bind"], facts["margin"]
    assert bind is None or (bind < margin) == ("coil bind" in against) or abs(bind - margin) < 1e-6, (bind, against)


def check_criteria(data: Data, candidate: Data) -> None:
    """Each result is its own figure; outside is outside its window, and inside is in it."""
    sags = {"free sag": candidate["free_sag"]["value"], "rider sag": candidate["rider_sag"]["value"]}
    for one in candidate["criteria"]:
        assert one["state"] in ("inside", "at the edge", "outside")
        value, said = sags.get(one["name"], candidate["end_multiple"]["value"]), numbers(one["words"])
        assert "topped out" in one["words"] or agrees(said[0], value), (one, value)
        if one["name"] == "free sag":
            low, high = (data["windows"]["free_sag"][side] for side in ("low", "high"))
            if not re.search(r"usual (up to|from)", one["words"]):  # the user's wish or what the spring is for may open one end
                assert [agrees(text, edge) for text, edge in zip(said[-2:], (low, high), strict=True)] == [True, True], one
                assert one["state"] != "outside" or not low <= value <= high, one
                assert one["state"] != "inside" or low - 1e-6 <= value <= high + 1e-6, one
        if one["name"] == "rider sag":
            assert agrees(said[1], data["targets"]["rider_sag"]["value"])


def check_figures(report: Data, end: str, setup: Data) -> None:
    """The figures of one setup against each other, by their own laws."""
    load, travel = report["ends"][end]["load"], entered(report, f"{end}.travel")
    assert -1e-9 <= setup["free_sag"]["value"] <= travel
    assert -1e-9 <= setup["rider_sag"]["value"] <= travel
    assert (setup["free_sag"]["value"] == 0.0) == setup["topped_out"]
    assert setup["end_force"]["value"] > 0.0
    rate, mass = setup["wheel_rate"]["value"], load["sprung_mass"]["value"]
    assert math.isclose(setup["frequency"]["value"], math.sqrt(1000.0 * rate / mass) / 2.0 / math.pi, rel_tol=1e-9)
    assert math.isclose(setup["end_multiple"]["value"] * load["aboard"]["value"], 1000.0 * setup["end_force"]["value"], rel_tol=1e-9)
    assert math.isclose(setup["energy_per_mass"]["value"] * mass, setup["landing_energy"]["value"], rel_tol=1e-9)
    if load["alone"]["value"] <= load["aboard"]["value"]:
        assert setup["free_sag"]["value"] <= setup["rider_sag"]["value"] + 1e-6
    if setup["landing_energy_rubber"] is not None:
        assert setup["landing_energy_rubber"]["value"] > setup["landing_energy"]["value"]


# Sentences that compare two numbers, wherever a problem is told; the first must stand to the second as the words say.
COMPARED: tuple[tuple[str, Callable[[float, float], bool]], ...] = (
    (r"load of (N) N is not held before full travel: springs and gas carry (N) N", lambda a, b: a > b),
    (r"fully collapsed, (N) mm, is below the travel of (N) mm", lambda a, b: a < b),
    (r"table ends at (N) mm; full travel with the most preload shortens the spring by (N) mm", lambda a, b: a < b),
    (r"table ends at (N) mm; at the stop it is squeezed by (N) mm", lambda a, b: a < b),
    (r"stroke it leaks from, (N) mm, lies beyond the travel of (N) mm", lambda a, b: a > b),
    (r"unsprung mass at the \w+, (N) kg, is not below the axle's load of (N) kg", lambda a, b: a >= b),
    (r"balance point, (N) mm from the pivot, lies beyond the axle at (N) mm", lambda a, b: a > b),
    (r"At (N) m/s² the rear wheel lifts: it carries nothing from (N) m/s²", lambda a, b: a >= b),
    (r"loads the fork with (N) N along its axis: springs and gas hold (N) N", lambda a, b: a > b),
)


def check_problem(problem: Data) -> None:
    """A problem is named, says where to look or what to do, and its numbers stand as its words say."""
    assert problem["code"]
    assert problem["message"].strip().endswith((".", ")"))
    assert problem["path"] in FIELDS or (problem["path"] == "" and problem["way_out"])
    for pattern, holds in COMPARED:
        found = re.search(pattern.replace("N)", r"−?\d+(?:\.\d+)?(?:e\+\d+)?)"), problem["message"])
        assert found is None or holds(*map(read, found.groups())), problem["message"]
    reach = re.search(r"end force of (\S+) kN: from (\S+) to (\S+) kN can be had", problem["message"])
    assert reach is None or not read(reach[2]) <= read(reach[1]) <= read(reach[3]), problem["message"]
