"""Every curve against the figures told beside it: at full travel the force, at each sag the load, at rider sag the wheel rate."""

import numpy as np
import pytest

from calc.impossible import Impossible
from calc.job import load
from calc.report.curve import force_curve
from calc.report.setups import Cases
from calc.report.sized import fields_of, sized
from tests.support.documents import demo
from tests.support.plain import read, report
from tests.support.random_jobs import random_job
from tests.unit.leg.test_air_hanging import PULLED
from tests.whole.test_air import AIR, OIL, SECOND, VALVE

AXLES = ("front", "rear")
KINDS = {
    "open": {},
    "unlike gaps": {"front.gap_left": "110 mm", "front.gap_right": "150 mm"},
    "unlike springs and gaps": {"front.spring_kind": "unequal", "front.rate": "4.2 N/mm", "front.rate_right": "5 N/mm", "front.gap_right": "160 mm"},
    "one spring": {"front.springs_in": "one", "front.rate": "8.6 N/mm", "standard.fork_rate": "8.6 N/mm"},
    "air": AIR | {"front.gap_min": "30 mm"}, "air, oil": OIL, "air, second": SECOND, "air, valve": VALVE | {"front.gap_min": "30 mm"},
    "air, pulled in": PULLED | {"front.gap_min": "20 mm", "front.gap_max": "400 mm"},
    "air and a coil": AIR | {"front.air_coil": "yes", "front.rate": "2 N/mm", "standard.fork_rate": "2 N/mm", "front.air_pressure": "6 bar"},
    "cartridge": {"front.air": "sealed cartridge"}, "gas cartridge": {"front.air": "sealed cartridge", "front.cartridge_fill": "gas"},
    "extended": {"front.gap_state": "extended", "front.gap_left": "400 mm", "front.gap_right": "410 mm", "standard.gap": "395 mm", "front.gap_min": None, "front.gap_max": None},
}  # fmt: skip
TRIED = {"front.tried_rate": "5 N/mm", "front.tried_preload": "7 mm", "front.tried_gap": "131 mm", "rear.tried_rate": "52 N/mm"}


def of(changes) -> dict:
    known = {path: value for path, value in changes.items() if value is not None}
    job = demo(known)
    assert not load(job).problems, load(job).problems
    return job


def check(curve, setup) -> None:
    """A curve, as it is drawn, against the figures of its setup."""
    sag, load_aboard = setup["rider_sag"]["value"], setup["end_force"]["value"] / setup["end_multiple"]["value"]
    assert curve["working"][-1] == pytest.approx(setup["end_force"]["value"], abs=2e-5)
    assert 0 < sag < curve["stroke"][-1]
    for which in ("slow", "working"):  # they meet at rider sag
        assert np.interp(sag, curve["stroke"], curve[which]) == pytest.approx(load_aboard, rel=0.01), which
    beside = np.searchsorted(curve["stroke"], sag)
    rates = curve["wheel_rate"][beside - 1 : beside + 1]
    assert min(rates) * 0.98 <= setup["wheel_rate"]["value"] <= max(rates) * 1.02


def checked(document) -> int:
    """How many curves of a job's report were held to their figures."""
    told, count = report(document, with_bands=False), 0
    for axle in AXLES:
        end = told["ends"][axle]
        if end["state"] == "refused":
            continue
        found = end["as_found"]["setup"]
        pairs = [(end["curve"], end["chosen"] if end["state"] == "ok" else found), (end["curve_found"], found)]
        if end["tried"] is not None:
            pairs.append((end["tried"]["curve"], end["tried"]["setup"]))
        for curve, setup in pairs:
            if curve is not None and setup is not None and not setup["topped_out"] and setup["rider_sag"]["value"] > 0:
                check(curve, setup)
                count += 1
    return count + _of_all(load(document))


def _of_all(job) -> int:
    """The curves of every candidate and of the standard setup, which the report does not draw yet, against their figures."""
    count = 0
    for axle in AXLES:
        done, _ = sized(axle, fields_of(job, axle), job.ranges)
        if done is None:
            continue
        cases = Cases.of(job, axle)
        setups = [(done.sized.setup.at(i), done.sized.figures.at(i)) for i in range(np.size(done.sized.figures.frequency))]
        ends = [(done.inputs.assembly.end(setup), figures) for setup, figures in setups]
        for end, figures in [*ends, (done.inputs.standard.end, done.inputs.standard)]:
            try:
                curve = read(force_curve(end, figures, cases.along))
            except Impossible:
                continue
            assert curve["working"][-1] == pytest.approx(float(figures.end_force) / 1000, abs=2e-5)
            loads = np.interp(float(figures.rider.stroke if cases.along else figures.rider.travel), curve["stroke"], curve["slow"])
            if not figures.rider.topped_out:
                assert loads == pytest.approx(float(figures.end_force / figures.end_multiple) / 1000, rel=0.02, abs=0.01)
            count += 1
    return count


@pytest.mark.parametrize("kind", KINDS)
def test_every_curve_ends_at_the_force_that_is_told(kind):
    assert checked(of(KINDS[kind] | TRIED)) > 12


@pytest.mark.parametrize("group", range(4))
def test_so_do_those_of_random_jobs(group):
    counts = [checked(random_job(f"curve {group} {i}", f"curve {group} {i} f", f"curve {group} {i} r")) for i in range(8)]
    assert sum(counts) > 60


def test_a_recommended_air_spring_s_curve_has_its_pressure():
    """The answer is pumped to less than what was found: at every stroke its curve lies lower."""
    front = report(demo(OIL), with_bands=False)["ends"]["front"]
    assert front["chosen"]["pressure"]["value"] < front["as_found"]["setup"]["pressure"]["value"]
    middle = len(front["curve"]["working"]) // 2
    assert front["curve"]["working"][middle] < front["curve_found"]["working"][middle] - 0.05


def test_the_curve_of_legs_with_unlike_gaps_is_both_legs_not_two_at_the_mean():
    """Half of two such legs and half of two of the other: pressures of 110 and 150 mm, where two at 130 are softer at the end."""

    def curve(left, right):
        changes = {"front.gap_left": f"{left} mm", "front.gap_right": f"{right} mm"}
        return np.array(report(demo(changes), with_bands=False)["ends"]["front"]["curve_found"]["slow"])

    both, low, high, mean = curve(110, 150), curve(110, 110), curve(150, 150), curve(130, 130)
    assert both == pytest.approx((low + high) / 2, abs=2e-5)
    assert both[-1] > mean[-1] + 0.01


def test_an_energy_that_no_gap_reaches_is_told_in_joules():
    front = report(demo({"front.end_target": "energy", "front.end_energy": "200 J"}), with_bands=False)["ends"]["front"]
    words = [
        reason["words"] for candidate in front["candidates"] for reason in candidate["short"] if reason["code"] == "end unreachable"
    ]
    assert words
    assert all(text.endswith("whatever is set for it; 200 J is wanted") for text in words), words
