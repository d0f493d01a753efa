"""What a report says of the whole bike, of other conditions and of what to measure, read back."""

from __future__ import annotations

import math
import re
from itertools import pairwise
from typing import Any

from calc.job.fields import FIELDS
from tests.support.verdicts import agrees, entered, finite, numbers, read
from tests.support.verdicts_answer import check_end

Data = dict[str, Any]


def check_report(report: Data) -> None:
    """Every verdict of a report; `report` of a job whose entries were all accepted."""
    assert finite(report)
    assert report["range_problems"] == []
    assert [path for path, field in report["fields"].items() if field.get("problem")] == []
    for end in report["ends"]:
        check_end(report, end)
        if report["ends"][end]["state"] != "refused":
            _conditions(report["ends"][end])
            _measure_next(report["ends"][end])
            _motion(report, report["ends"][end])
    _attitude(report)
    _scales(report)


def _attitude(report: Data) -> None:
    """Less sag is higher; a nose that comes up against the rear is slacker, and the tubes go up through the clamps for it."""
    told, ends = report["attitude"], report["ends"]
    if told is None:
        assert any(data["state"] != "ok" or data["as_found"]["setup"] is None for data in ends.values())
        return
    less = {
        end: data["as_found"]["setup"]["rider_sag"]["value"] - data["chosen"]["rider_sag"]["value"] for end, data in ends.items()
    }
    rises = {"front": less["front"] * math.cos(math.radians(entered(report, "bike.rake"))), "rear": less["rear"]}
    for end, rise in rises.items():
        assert math.isclose(told[f"{end}_height"]["value"], rise, abs_tol=1e-6)
        said = re.search(rf"the {end} (sits (\d+)(?: ±\S+)? mm (higher|lower)|stays where it is)", told["words"])
        assert said, told["words"]
        assert (said[2] is None) == (round(abs(rise), 9) <= 0.5)
        assert said[2] is None or (agrees(said[2], abs(rise)) and said[3] == ("higher" if rise > 0 else "lower")), told["words"]
    nose = rises["front"] - rises["rear"]
    shift = nose / math.cos(math.radians(entered(report, "bike.rake")))
    assert math.isclose(told["clamp_shift"]["value"], shift, abs_tol=1e-6)
    clamps = re.search(r"move the tubes (\d+) mm (up|down)", told["words"])
    off, read = told["clamp_shift"]["plus_minus_95"] or 0.0, "came in is assumed" not in told["words"]
    worth = round(abs(shift), 9) > 0.5 and abs(shift) > off
    assert (clamps is not None) == (worth and read), "only what is worth a millimetre, beyond its ±, and starts from a reading"
    assert ("may be no change at all" in told["words"]) == (round(abs(shift), 9) > 0.5 and abs(shift) <= off), told["words"]
    assert clamps is None or (agrees(clamps[1], abs(shift)) and clamps[2] == ("up" if nose > 0 else "down"))
    assert clamps is None or f"{'raise' if nose > 0 else 'lower'} the rear" in told["words"]
    turned = re.search(r"makes the rake(?: (\S+?)(?: ±\S+)?°)? (slacker|steeper)", told["words"])
    assert (turned is not None) == worth
    assert turned is None or turned[2] == ("slacker" if nose > 0 else "steeper")
    base = entered(report, "bike.wheelbase")
    assert (told["rake_change"] is None) == (base is None)
    if base is not None:
        expected = math.degrees(math.atan(nose / base))
        assert math.isclose(told["rake_change"]["value"], expected, abs_tol=1e-6)
        assert turned is None or turned[1] is None or agrees(turned[1], abs(expected))


def _scales(report: Data) -> None:
    """Scales that differ from what they carry by more than 3 kg and their +/- together are told, and by how much."""
    told = next((note for note in report["notes"] if "rider aboard the axles carry" in note), None)
    axles = [f"{who}.{end}_axle" for who in ("rider", "bike") for end in ("front", "rear")]
    if any(entered(report, path) is None for path in axles):
        return
    others = [path for path in ("rider.mass", "rider.passenger", "rider.luggage") if entered(report, path) is not None]
    aboard, alone = (sum(entered(report, path) for path in pair) for pair in (axles[:2], axles[2:]))
    off = abs(aboard - alone - sum(entered(report, path) for path in others))
    explained = max(3.0, math.hypot(*(report["fields"][path]["plus_minus_95"] for path in (*axles, *others))))
    assert (told is not None) == (off > explained) or abs(off - explained) < 1e-6, (told, off)
    assert told is None or agrees(numbers(told)[1], off)


def _conditions(data: Data) -> None:
    """More end force acts like less gap; more of it over the load asks for more gap."""
    rows = {row["key"]: row for row in data["conditions"] if not row["problem"]}
    built = rows.get("as built")
    for key, row in rows.items():
        if key == "as built" or built is None or row["acts_like"] is None:
            continue
        words, change = row["words"], row["acts_like"]["value"]
        told = numbers(re.sub(r" ±[\d.]+", "", words))
        if words.startswith("Rides as built"):
            assert abs(change) <= 0.5 + 1e-9
            continue
        assert agrees(told[0], abs(change)), words
        assert ("mm smaller" in words) == (change < 0) != ("mm larger" in words), words
        assert (row["end_force"]["value"] > built["end_force"]["value"]) == (change < 0), words
        if row["restoring"] is not None:
            gap = (data.get("chosen") or data["as_found"]["setup"])["gap"]["value"]
            assert agrees(told[1], row["restoring"]["value"]), words
            if abs(row["restoring"]["value"] - gap) > 1e-3:
                assert (row["restoring"]["value"] > gap) == (row["end_multiple"]["value"] > built["end_multiple"]["value"]), words


def _measure_next(data: Data) -> None:
    """A better reading narrows the result, as it is written too."""
    for asked in data["measure_next"]:
        said = re.search(r"\(narrows the (.+) from ±(\S+) to ±(\S+) ?(.*)\)\.$", asked["words"])
        assert said, asked["words"]
        now, then = said[2], said[3]
        assert (said[1], said[4]) == (asked["result"], asked["unit"])
        assert read(then) < read(now), asked["words"]
        assert asked["then"] < asked["now"]
        assert 0.0 < asked["share"] <= 1.0
        assert asked["path"] in FIELDS


def _motion(report: Data, data: Data) -> None:
    motion = data["motion"]
    if motion is None:
        return
    rows = [(row["travel"]["value"], row["stroke"]["value"], row["leverage"]["value"]) for row in motion["rows"]]
    assert all(b[0] > a[0] and b[1] > a[1] for a, b in pairwise(rows))
    assert math.isclose(motion["average"]["value"], rows[-1][0] / rows[-1][1], rel_tol=1e-9)
    assert math.isclose(motion["fall"]["value"], 100.0 * (1.0 - rows[-1][2] / rows[0][2]), abs_tol=1e-6)
    if motion["fit"] is not None:
        told, residuals = numbers(motion["words"]), [row["off"]["value"] for row in motion["fit"]["residuals"]]
        scatter = math.sqrt(sum(off**2 for off in residuals) / (len(residuals) - 3))
        assert told[0] == str(len(report["fields"]["rear.pairs"]["pairs"]))
        assert agrees(told[1], scatter), motion["words"]
