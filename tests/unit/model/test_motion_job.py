"""The rear's motion as a job says it: leverage, pairs, a table, points; its table, its side view, its +/-."""

import json
import math
import re
from itertools import pairwise

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.job import load
from calc.model.motion import rear_motion
from tests.support import motorcycle as m
from tests.support.documents import demo
from tests.support.plain import applies, report
from tests.support.plain import text as text_of
from tests.unit.motion.test_linkage import AT_REST, FULL, on_swingarm, published

KEYS = {
    "axle": "axle",
    "shock_top": "shock top",
    "rocker": "rocker pivot",
    "rocker_rod": "rod on rocker",
    "rocker_shock": "shock on rocker",
}


def coordinates(points: dict) -> dict:
    return {f"rear.{key}_{axis}": f"{value:.6f} mm" for key, xz in points.items() for axis, value in zip("xz", xz, strict=True)}


def the_published() -> dict:
    """The data set's points, as a person would enter them: mm from the swingarm pivot."""
    points = {key: m.REAR_POINTS[name] for key, name in KEYS.items()} | {"rod": m.REAR_POINTS["rod on swingarm"]}
    moved = {key: [1000.0 * (a - b) for a, b in zip(xz, m.SWINGARM_PIVOT, strict=True)] for key, xz in points.items()}
    return coordinates(moved) | {
        "rear.motion_from": "points", "rear.linkage": "rocker", "rear.rocker_on": "frame", "rear.points_at": f"{AT_REST} mm",
        "rear.travel": f"{FULL} mm", "rear.target_sag": "40 mm", "rear.target_free_sag": "8 mm",
    }  # fmt: skip


def off_road() -> dict:
    points = {"axle": (-570, -130), "shock_top": (-74, 313), "rocker": (-172, -60), "rocker_rod": (-202, -132)}
    points |= {"rocker_shock": (-131, -131), "rod": (4, -158)}
    return coordinates(points) | {"rear.motion_from": "points", "rear.linkage": "rocker", "rear.travel": "300 mm"}


HEIGHTS = np.array([0.0, 50, 100, 150, 200, 250, 305])
SCATTER = np.array([0.3, -0.4, 0.2, 0.3, -0.5, 0.2, -0.1])


def pairs(lengths: np.ndarray) -> str:
    return "; ".join(f"{z:g} {y:.3f}" for z, y in zip(HEIGHTS, lengths, strict=True))


def measured(scatter: float = 1.0) -> dict:
    lengths = 470.0 - 0.36 * HEIGHTS - 1.3e-4 * HEIGHTS**2 + scatter * SCATTER
    return {"rear.motion_from": "pairs", "rear.pairs": pairs(lengths)}


def rear(changes: dict, bands: bool = False) -> dict:
    return report(demo(changes), bands)["ends"]["rear"]


def test_the_published_motorcycle_as_a_job():
    motion = rear_motion(load(demo(the_published())))
    assert float(motion.length(AT_REST)) == pytest.approx(m.SHOCK_LENGTH, rel=1e-4)
    assert float(motion.ratio(AT_REST)) == pytest.approx(m.RATIO, rel=1e-4)
    assert motion.stroke(np.linspace(0, FULL, 9)) == pytest.approx(published().stroke(np.linspace(0, FULL, 9)), abs=1e-4)


@pytest.mark.parametrize(
    "changes",
    [the_published(), off_road(), measured(), measured() | {"rear.motion_from": "table", "rear.pairs": pairs(470 - 0.4 * HEIGHTS)}],
)
def test_every_way_is_sized_with_its_table(changes):
    data = rear(changes)
    assert data["state"] in {"ok", "none"}
    motion = data["motion"]
    assert motion["known_from"] == changes["rear.motion_from"]
    rows = [(r["travel"]["value"], r["stroke"]["value"], r["leverage"]["value"]) for r in motion["rows"]]
    assert rows[0][:2] == (0.0, 0.0)
    assert all(b[1] > a[1] for a, b in pairwise(rows))
    assert motion["average"]["value"] == pytest.approx(rows[-1][0] / rows[-1][1])
    assert motion["fall"]["value"] == pytest.approx(100 * (1 - rows[-1][2] / rows[0][2]))
    assert "chain pull" in motion["left_out"].lower()


def test_the_average_and_fall_that_were_entered_come_back():
    motion = rear({})["motion"]
    assert motion["average"]["value"] == pytest.approx(2.5)
    assert motion["fall"]["value"] == pytest.approx(22.0)
    assert motion["views"] == []
    assert motion["fit"] is None


def test_the_side_view_stands_at_hanging_rider_sag_and_full_travel():
    data = rear(off_road())
    views = data["motion"]["views"]
    sag = (data.get("chosen") or data["as_found"]["setup"])["rider_sag"]["value"]
    assert [v["at"] for v in views] == ["hanging", "at rider sag", "at full travel"]
    assert [v["travel"]["value"] for v in views] == pytest.approx([0.0, sag, 300.0])
    for view in views:
        points = view["points"]
        assert points["axle"][1] == pytest.approx(-130 + view["travel"]["value"], abs=0.006)
        length = math.dist(points["shock top"], points["shock on rocker"])
        assert view["shock_length"]["value"] == pytest.approx(length, abs=0.02)
        assert {end for bar in view["bars"] for end in bar} == set(points)
    assert views[0]["points"]["rod on rocker"] == pytest.approx([-202, -132])


def test_scatter_is_shown_and_enters_the_band():
    little, much = (rear(measured(s), True) for s in (0.05, 3.0))
    for data, factor in ((little, 0.05), (much, 3.0)):
        off = [r["off"]["value"] for r in data["motion"]["fit"]["residuals"]]
        assert data["motion"]["fit"]["scatter"]["value"] == pytest.approx(math.sqrt(sum(x * x for x in off) / 4))
        assert f"{data['motion']['fit']['scatter']['value']:.2f} mm" in data["motion"]["words"]
        assert data["motion"]["fit"]["scatter"]["value"] < factor
    for name in ("average", "fall"):
        assert much["motion"][name]["plus_minus_95"] > 5 * little["motion"][name]["plus_minus_95"]
    assert much["chosen"]["end_force"]["plus_minus_95"] > little["chosen"]["end_force"]["plus_minus_95"]


def test_pairs_are_asked_for_again_where_they_leave_most_open():
    asked = rear(measured(4.0), True)["measure_next"]
    first = next(one for one in asked if one["result"] != "spring rate")  # the rate's cancel out of the choice
    assert first["path"] == "rear.pairs"
    assert "heights of the wheel" in first["words"]


def test_band_of_the_fall_is_that_of_the_fit():
    """Draws against first order: dq/dz and q hanging of the fit, moved by its own root."""
    job = load(demo(measured(1.0)))
    fit, full = rear_motion(job).fit, 305.0

    def fall(start: float, bend: float, curve: float = 0.0) -> float:
        return 100.0 * (1.0 - start / (start + bend * full + curve * full**2))

    step = [fall(fit.start + a, fit.bend + b, c) - fall(fit.start, fit.bend) for a, b, c in fit.root.T]
    assert rear(measured(1.0), True)["motion"]["fall"]["plus_minus_95"] == pytest.approx(1.96 * math.hypot(*step), rel=0.15)


@pytest.mark.parametrize(
    ("changes", "path", "words"),
    [
        ({"rear.motion_from": "pairs"}, "rear.pairs", "are not entered"),
        (
            measured() | {"rear.travel": "320 mm"},
            "rear.pairs",
            "run from 0 to 305 mm of wheel travel; the rear wheel travel is 0 to 320 mm",
        ),
        (measured() | {"rear.pairs": "0 470; 100 430; 200 380; 305 330"}, "rear.pairs", "4 heights of the wheel are too few"),
        (measured() | {"rear.pairs": "0 470; 50 480; 100 490; 200 500; 305 510"}, "rear.pairs", "does not shorten all the way"),
        (off_road() | {"rear.rod_z": "abc"}, "rear.rod_z", "this is not a number"),
        (off_road() | {"rear.shock_top_z": "-400 mm"}, "rear.axle_x", "does not shorten"),
        ({"rear.motion_from": "points"}, "rear.axle_x", "Axle, forward is not entered"),
    ],
)
def test_what_cannot_be_is_refused_at_its_field(changes, path, words):
    data = rear(changes)
    assert data["state"] == "refused"
    assert data["problems"][0]["path"] == path
    assert words in data["problems"][0]["message"]


def test_a_job_by_leverage_shows_none_of_the_other_fields():
    plain = report(demo(), False)
    for path in ("rear.pairs", "rear.linkage", "rear.axle_x", "rear.rocker_x", "rear.shock_foot_z", "rear.wheel_mass"):
        assert not applies(plain, path), path
    by_points = report(demo(off_road()), False)
    assert applies(by_points, "rear.rocker_x")
    assert not applies(by_points, "rear.shock_foot_x")
    assert not applies(by_points, "rear.leverage")


def test_the_command_line_prints_the_motion():
    text = text_of(demo(off_road()), False)
    assert re.search(r"shock stroke +leverage\n +mm +mm +wheel / shock\n", text)
    assert "at full travel; from the swingarm pivot" in text
    leverage = 1.0 / float(on_swingarm().ratio(0.0))
    assert f"{leverage:.2f}" in text


@given(
    off=st.lists(st.floats(-60, 60), min_size=12, max_size=12), on=st.sampled_from(["frame", "swingarm"]), travel=st.floats(150, 330),
    plus_minus=st.sampled_from(["1 mm", "8 mm"]),
)  # fmt: skip
@settings(max_examples=6)
def test_any_linkage_is_answered_in_finite_numbers(off, on, travel, plus_minus):
    changes = off_road() | {"rear.rocker_on": on, "rear.travel": f"{travel:.1f} mm"}
    axes = [path for path in changes if path.endswith(("_x", "_z"))]
    for path, by in zip(axes, off, strict=True):
        changes[path] = {
            "value": f"{float(changes[path].split()[0]) + by:.2f} mm",
            "plus_minus_95": plus_minus,
            "origin": "measured",
        }
    data = rear(changes, True)
    json.dumps(data, allow_nan=False)
    assert data["state"] in {"ok", "none", "refused"}
    assert all(problem["message"] for problem in data["problems"])


@given(
    readings=st.lists(st.tuples(st.integers(0, 320), st.integers(280, 520)), min_size=4, max_size=12, unique_by=lambda pair: pair[0]),
    known=st.sampled_from(["pairs", "table"]), falling=st.booleans(),
)  # fmt: skip
@settings(max_examples=40)
def test_any_pairs_are_answered_in_finite_numbers(readings, known, falling):
    heights = sorted(z for z, _ in readings)
    heights[0] = 0
    lengths = sorted((y for _, y in readings), reverse=True) if falling else [y for _, y in readings]
    text = "; ".join(f"{z} {y}" for z, y in zip(heights, lengths, strict=True))
    data = rear({"rear.motion_from": known, "rear.pairs": text, "rear.travel": f"{max(heights[-1], 20)} mm"})
    json.dumps(data, allow_nan=False)
    assert data["state"] in {"ok", "none", "refused"}


def test_wild_pairs_leave_no_band_rather_than_no_answer():
    """All draws together reach for springs that some of them cannot be held by."""
    wild = {"rear.motion_from": "pairs", "rear.pairs": "0 514; 180 466; 211 439; 293 431; 298 404", "rear.travel": "298 mm"}
    data = rear(wild, True)
    assert data["state"] == "ok"
    assert data["sure"] is None
    assert data["motion"]["fit"]["scatter"]["value"] > 5.0


def test_a_wheel_that_pushes_back_less_as_it_rises_has_no_sag():
    data = rear({"rear.motion_from": "table", "rear.pairs": "0 462; 99 418; 142 410; 235 382", "rear.travel": "235 mm"})
    assert data["state"] == "refused"
    assert "nowhere to settle" in data["problems"][0]["message"]
