"""A step of the gap: against the difference of two whole reports, each of a job built to its own gap."""

import pytest

from tests.support.documents import changed, demo
from tests.support.plain import report

BUILT = {"front.built_rate": "4.6 N/mm", "front.built_preload": "3 mm"}
FORKS = {
    "open": {},
    "sealed": {"front.air": "sealed cartridge"},
    "spring in": {
        "front.gap_read": "in",
        "front.free_length": "470 mm",
        "front.spacer_length": "40 mm",
        "front.spacer_volume": "14 ml",
    },
}


def built(gap, fork):
    both = {f"front.built_gap_{leg}": f"{gap} mm" for leg in ("left", "right")}
    return report(changed(demo(fork), BUILT | both), with_bands=False)["ends"]["front"]["built"]


@pytest.mark.parametrize("fork", FORKS)
def test_the_step_is_what_two_reports_differ_by(fork):
    before, after = (built(gap, FORKS[fork]) for gap in (120, 115))
    step = before["gap_step"]
    was, now = before["setup"], after["setup"]
    assert step["force"]["value"] == pytest.approx(100 * (now["end_force"]["value"] / was["end_force"]["value"] - 1), rel=1e-9)
    assert step["rider_sag"]["value"] == pytest.approx(now["rider_sag"]["value"] - was["rider_sag"]["value"], abs=1e-9)
    assert step["gas_after"]["value"] == pytest.approx(after["gap_step"]["gas_before"]["value"], rel=1e-9)
    assert step["force"]["value"] > 0


def test_the_gas_carries_what_the_springs_do_not():
    # By hand: both springs at full travel, along the leg, 2 x 4.6 x (300 + 3) N, carried to the vertical by the rake of 26.5 degrees
    import math

    found = built(120, {})
    springs = 2 * 4.6 * (300 + 3) / math.cos(math.radians(26.5))
    force = 1000 * found["setup"]["end_force"]["value"]
    assert found["gap_step"]["gas_before"]["value"] == pytest.approx(100 * (1 - springs / force), abs=0.6)


def test_a_step_into_the_lock_says_so():
    locked = {"front.collapsed_stroke": "300 mm", "front.built_rate": "4.6", "front.built_preload": "3"}
    for gap in range(60, 20, -1):
        both = {f"front.built_gap_{leg}": f"{gap} mm" for leg in ("left", "right")}
        found = report(demo(locked | both), with_bands=False)["ends"]["front"]["built"]
        if found["setup"] is None:
            break
        if found["gap_step"] and found["gap_step"]["force"] is None:
            assert "no longer works" in found["gap_step"]["words"]
            return
    pytest.fail("no gap was found that locks within a step")
