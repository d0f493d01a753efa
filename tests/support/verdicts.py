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


# What a reason says: the numbers in its words by name, and how they must stand to one another as they are written.
REASONS: dict[str, tuple[tuple[str, ...], Callable[..., bool]]] = {
    "coil bind": (("bind", "margin"), lambda has, limit: has < limit),
    "second coil bind": (("second_bind", "margin"), lambda has, limit: has < limit),
    "second closes early": (("second_short",), lambda short: short >= 0),
    "too wide": (("wide", "spring_bore"), lambda wide, bore: wide >= bore),
    "too narrow": (("new_inside", "spring_core"), lambda inside, core: inside <= core),
    "pressure above": (("pressure", "air_most"), lambda has, limit: has > limit),
    "pressure most": (("pressure", "rider_sag", "wanted"), lambda _, has, wanted: has > wanted),
    "oil out": (("oil_out", "air_filled"), lambda out, there: out > there),
    "preload below": (("preload", "rider_sag", "wanted"), lambda _, has, wanted: has <= wanted),
    "preload above": (("preload", "rider_sag", "wanted"), lambda _, has, wanted: has >= wanted),
    "preload low": (("preload", "preload_min"), lambda has, limit: has < limit),
    "preload high": (("preload", "preload_max"), lambda has, limit: has > limit),
    "gap below": (("gap_exact", "gap"), lambda wants, gap: wants < gap),
    "gap above": (("gap_exact", "gap"), lambda wants, gap: wants > gap),
    "end unreachable": (("end", "end_wanted"), lambda has, wanted: has != wanted),
    "sag unreachable": (("rider_sag", "wanted"), lambda has, wanted: has != wanted),
}
HARD = {
    "coil bind",
    "second coil bind",
    "second closes early",
    "too wide",
    "too narrow",
    "pressure above",
    "oil out",
    "no pressure",
}
# A reason that its numbers alone decide: it is told where they stand so, and not where they do not.
DECIDED = ("coil bind", "preload low", "preload high")
CRITERIA = ("rider sag", "free sag", "end of travel")  # an air spring's volumes decide its free sag: that one is told alone


def known(report: Data, end: str, candidate: Data) -> dict[str, float | None]:
    """What the numbers of a candidate's reasons must be, from the job's fields and the candidate's own figures."""
    data, targets = report["ends"][end], report["ends"][end]["targets"]
    sizes = ("preload_min", "preload_max", "spring_bore", "new_inside", "spring_core", "air_most")
    found = {key: entered(report, f"{end}.{key}") for key in sizes if f"{end}.{key}" in FIELDS}

    def of(name: str) -> float | None:
        return None if candidate[name] is None else candidate[name]["value"]

    load, force = data["load"]["aboard"]["value"], targets["end"] if targets["end"] and targets["end"]["unit"] == "kN" else None
    energy = targets["end"] is not None and force is None
    wanted = 1000.0 * force["value"] / load if force else targets["end"]["value"] if energy else None
    found |= {
        "preload": of("preload"),
        "rider_sag": of("rider_sag"),
        "wanted": targets["rider_sag"]["value"],
        "margin": MARGIN[end],
    }
    found |= {
        "bind": of("bind_clearance"),
        "second_bind": of("second_bind_clearance"),
        "gap": of("gap"),
        "pressure": of("pressure"),
    }
    second, oil = of("second_bind_clearance"), of("air_oil")
    found |= {"second_short": None if second is None else -second, "oil_out": None if oil is None else -oil}
    return found | {"end": of("landing_energy" if energy else "end_multiple"), "end_wanted": wanted}


def seat(report: Data, end: str, setup: Data) -> float | None:
    """How far spacer or collar moves: preload less preload as found, less what the new spring is longer by."""
    found = report["ends"][end]["as_found"]["setup"]
    if found is None:
        return None
    new, old = entered(report, f"{end}.new_free"), entered(report, f"{end}.free_length")
    longer = (
        new - old
        if new is not None and old is not None and not setup["fitted"] and report["fields"][f"{end}.free_length"]["entered"]
        else 0.0
    )
    return setup["preload"]["value"] - found["preload"]["value"] - longer


def check_reasons(report: Data, end: str, candidate: Data) -> None:
    """What cannot be built and what is not reached: as written, against the candidate's own figures and the job's fields."""
    facts = known(report, end, candidate)
    told = {one["code"]: one["words"] for one in (*candidate["vetoes"], *candidate["short"])}
    for one in (*candidate["vetoes"], *candidate["short"]):
        # Both bar a spring to change to, where one nearer to the yardstick is on offer.
        no_preload = one["code"] in ("preload below", "preload above") and not candidate["fitted"]
        assert (one["code"] in HARD) == (one in candidate["vetoes"]) or no_preload
    assert all(one["way_out"] for one in (*candidate["vetoes"], *candidate["short"]))
    for code, words in told.items():
        if code not in REASONS:
            continue
        said, (names, holds) = numbers(words), REASONS[code]
        assert len(said) == len(names), words
        assert holds(*map(read, said)), words  # as it is written, not only as it was worked out
        for text, name in zip(said, names, strict=True):
            if facts.get(name) is not None:
                assert agrees(text, facts[name]), (words, name, facts[name])
    for code in () if candidate["pressure"] else DECIDED:
        names, holds = REASONS[code]
        has, limit = (facts.get(name) for name in names)
        if has is not None and limit is not None:
            assert holds(has, limit) == (code in told) or abs(has - limit) < 1e-6, (code, has, limit)


def check_criteria(report: Data, end: str, candidate: Data) -> dict[str, float]:
    """Each result against its window, as figures; returns how far each that is judged lies beyond it, above 0 where it does."""
    data, travel = report["ends"][end], entered(report, f"{end}.travel")
    wanted = data["targets"]["rider_sag"]["value"]
    judged = tuple(name for name in CRITERIA if name != "free sag" or not candidate["pressure"])
    assert tuple(one["name"] for one in candidate["criteria"]) == judged
    words = {one["name"]: one["words"] for one in candidate["criteria"]}
    sag = re.fullmatch(r"rider sag (\S+) mm, (\S+) wanted", words["rider sag"])
    assert sag, words
    assert agrees(sag[1], candidate["rider_sag"]["value"]), words
    assert agrees(sag[2], wanted), words
    within = entered(report, f"{end}.sag_within") / 100.0 * travel
    beyond = {"rider sag": abs(candidate["rider_sag"]["value"] - wanted) - within}
    if "free sag" in words:
        beyond |= _free_sag(data, candidate, words["free sag"])
    force = re.fullmatch(r"force at full travel (\S+) × rider load(?:, at least (\S+) wanted)?", words["end of travel"])
    assert force, words
    assert agrees(force[1], candidate["end_multiple"]["value"]), words
    if force[2] and read(force[1]) != read(force[2]):
        beyond["end of travel"] = read(force[2]) - candidate["end_multiple"]["value"]
    for one in candidate["criteria"]:  # nothing is outside that lies within its window
        assert one["state"] != "outside" or beyond.get(one["name"], 1.0) > -1e-6, one
    return beyond


def _free_sag(data: Data, candidate: Data, words: str) -> dict[str, float]:
    """Free sag in words against its figure and its window, which may be open at an end; a fork that is topped out has none."""
    window, value = data["windows"]["free_sag"], candidate["free_sag"]["value"]
    none = words.startswith("free sag none, topped out")
    assert none == candidate["topped_out"], words
    told = re.fullmatch(
        r"free sag (?:none, topped out|(?P<own>\S+) mm), usual (?:up to (?P<most>\S+)|from (?P<least>\S+)|(?P<low>\S+)-(?P<high>\S+))",
        words,
    )
    assert told, words
    assert none or agrees(told["own"], value), words
    high, low = told["most"] or told["high"], told["least"] or told["low"]
    assert high is None or agrees(high, window["high"]), words
    assert agrees(low, window["low"]) if low else window["low"] <= 0.0, words
    if none:
        return {}
    return {"free sag": max(window["low"] - value if low else -math.inf, value - window["high"] if high else -math.inf)}


def check_margins(judged: list[tuple[Data, dict[str, float]]]) -> None:
    """An end has one margin for each result: what is barred lies farther beyond its window than whatever is not."""
    for name in CRITERIA:
        by_state: dict[bool, list[float]] = {True: [], False: []}
        for candidate, beyond in judged:
            for one in candidate["criteria"]:
                if one["name"] == name and name in beyond:
                    by_state[one["state"] == "outside"].append(beyond[name])
        if by_state[True] and by_state[False]:
            near = 0.06 if name == "end of travel" else 1e-6  # the least multiple is known from its words alone
            assert max(by_state[False]) <= min(by_state[True]) + near, (name, by_state)


def check_figures(report: Data, end: str, setup: Data) -> None:
    """The figures of one setup against each other, by their own laws."""
    load, travel = report["ends"][end]["load"], entered(report, f"{end}.travel")
    assert -1e-9 <= setup["free_sag"]["value"] <= travel
    assert -1e-9 <= setup["rider_sag"]["value"] <= travel
    assert (setup["free_sag"]["value"] == 0.0) == setup["topped_out"]
    assert setup["end_force"]["value"] > 0.0
    rate, mass = setup["wheel_rate"]["value"], load["sprung_mass"]["value"]
    assert math.isclose(setup["frequency"]["value"], math.sqrt(1000.0 * rate / mass) / 2.0 / math.pi, rel_tol=1e-9)
    assert math.isclose(
        setup["end_multiple"]["value"] * load["aboard"]["value"], 1000.0 * setup["end_force"]["value"], rel_tol=1e-9
    )
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
