"""The attitude against a bike of two points: a rear axle on the ground, a leaning fork on its axle, a frame between them."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from calc.end.attitude import clamp_shift, rake_change
from calc.job.starter import start
from calc.practice import Axle
from calc.report.bike import _attitude_words
from calc.report.quantity import quantity, with_half
from tests.support.plain import report

RAKE, BASE, LEG, REAR = (
    math.radians(26.5),
    1485.0,
    700.0,
    350.0,
)  # mm: from the front axle to the clamps, from the rear axle up to its mark


def pitch(front: float, rear: float, shift: float = 0.0) -> float:
    """How far the frame is turned nose-up [rad] when the front of it rises over its axle by `front`, the rear by `rear`, mm.

    The frame is a rigid bar from a mark over the rear axle to the clamps; the leg goes along its own steering axis, which turns
    with the frame; `shift` draws the tubes up through the clamps. Both axles stay at one height, the front one finds its place.
    """
    bar = (BASE - LEG * math.sin(RAKE), LEG * math.cos(RAKE) - REAR)  # from the rear mark to the clamps, as it came in
    leg = LEG + front / math.cos(RAKE) - shift

    def axle_height(angle: float) -> float:
        up = REAR + rear + bar[0] * math.sin(angle) + bar[1] * math.cos(angle)
        return up - leg * math.cos(RAKE + angle)

    return brentq(axle_height, -0.2, 0.2, xtol=1e-14)


moves = st.floats(-25, 25)


@given(front=moves, rear=moves)
def test_the_rake_turns_as_the_bike_of_two_points_does(front, rear):
    assert float(rake_change(front, rear, BASE)) == pytest.approx(pitch(front, rear), rel=0.04, abs=2e-5)


@given(front=moves, rear=moves)
def test_the_clamps_bring_the_attitude_back(front, rear):
    shift = float(clamp_shift(front, rear, RAKE))
    assert pitch(front, rear, shift) == pytest.approx(0.0, abs=1e-9)
    wrong = front / math.cos(RAKE)  # what only undoes the front's own change
    assert abs(pitch(front, rear, wrong)) >= abs(pitch(front, rear, shift)) - 1e-12


def test_a_rear_that_sits_lower_still_asks_for_the_tubes_up():
    """The front 2 mm lower, the rear 8: the bike is slacker than it came, and tubes moved down would make it slacker still."""
    assert pitch(-2.0, -8.0) > 0
    assert pitch(-2.0, -8.0, -2.0 / math.cos(RAKE)) > pitch(-2.0, -8.0)
    assert float(clamp_shift(-2.0, -8.0, RAKE)) == pytest.approx(6.7, abs=0.01)
    assert words(-2.0, -8.0) == (
        "Compared with how it came in, the front sits 2 mm lower and the rear sits 8 mm lower. That makes the rake 0.2° slacker. "
        "To bring front against rear back, move the tubes 7 mm up through the clamps, "
        "or raise the rear 6 mm at the axle by the shock's length or top mount, not by its preload. "
        "Before it is ridden, check at full travel that wheel and mudguard clear the lower clamp and the radiator."
    )


def words(front: float, rear: float, half: float | None = None, base: float | None = BASE, assumed: tuple[Axle, ...] = ()) -> str:
    heights = [with_half(quantity(x, "mm", "", 0), half) for x in (front, rear)]
    both = None if half is None else 2 * half
    shift = with_half(quantity(clamp_shift(front, rear, RAKE), "mm", "", 0), both)
    turned = None if base is None else quantity(math.degrees(rake_change(front, rear, base)), "°", "", 1)
    return _attitude_words(*heights, shift, turned, assumed)


def test_the_other_way_round():
    told = words(-6.0, 3.0, 2.0)
    assert "the front sits 6 ±2 mm lower and the rear sits 3 ±2 mm higher" in told
    assert "That makes the rake 0.3° steeper." in told
    assert "move the tubes 10 mm down through the clamps, or lower the rear" in told


def test_nothing_is_advised_that_is_not_worth_a_millimetre():
    told = words(12.0, 11.8)
    assert told.endswith("Front against rear is as it was.")
    assert "clamps" not in told
    assert "the front stays where it is and the rear stays where it is" in words(0.2, -0.1)


def test_without_a_wheelbase_the_direction_is_still_told():
    assert "That makes the rake slacker." in words(5.0, -5.0, base=None)


@pytest.mark.parametrize(("assumed", "said"), [
    (("front", "rear"), "How the front and the rear came in is assumed: read the sags before you move the tubes."),
    (("rear",), "How the rear came in is assumed: read the sags before you move the tubes."),
])  # fmt: skip
def test_from_how_nobody_read_it_nothing_is_ordered(assumed, said):
    told = words(-2.0, -8.0, assumed=assumed)
    assert told.endswith(f"That makes the rake 0.2° slacker. {said}")
    assert "clamps" not in told


def test_a_change_inside_its_own_plus_minus_is_none_and_advises_nothing():
    told = words(2.0, 1.0, 3.0)
    assert told.endswith("Front against rear that is 1 ±6 mm, which may be no change at all: leave the tubes.")
    assert "rake" not in told
    assert "move the tubes 7 mm up" in words(-2.0, -8.0, 3.0), "beyond it all is told"


@pytest.mark.parametrize(("front", "rear", "check"), [
    (0.0, -6.0, "check at full travel that wheel and mudguard clear the lower clamp and the radiator"), (0.0, -4.0, None),
    (0.0, 6.0, "check that both clamps still hold the full tube"), (0.0, 4.0, None),
])  # fmt: skip
def test_tubes_that_are_moved_far_are_looked_at_before_the_ride(front, rear, check):
    """More than 5 mm: common practice, no source."""
    told = words(front, rear)
    assert "move the tubes" in told
    assert ("Before it is ridden" in told) == (check is not None)
    assert check is None or check in told


def sags(**entries: str) -> dict[str, object]:
    return {name: {"value": value, "origin": "measured"} for name, value in entries.items()}


@pytest.mark.parametrize(("changes", "asked"), [
    ({}, False), ({"bike.sags_of": "built"}, True), ({"bike.sags_correct": "no"}, True),
])  # fmt: skip
def test_a_sag_read_as_it_came_in_counts_as_read(changes, asked):
    """Where it corrects what the height as found is worked out from; one that is only compared, or of the bike as built, does not."""
    job = start("road", "82 kg")
    job["front"] = job.get("front", {}) | sags(
        alone_sag="20 mm", alone_again_sag="22 mm", aboard_sag="39 mm", aboard_again_sag="43 mm"
    )
    job["rear"] = job.get("rear", {}) | sags(alone_sag="7 mm", alone_again_sag="9 mm", aboard_sag="35 mm", aboard_again_sag="38 mm")
    job["front"] |= {f"built_{part}": value for part, value in BUILT.items()}
    job["rear"] |= {"built_rate": "90 N/mm", "built_preload": "10 mm"}
    for path, value in changes.items():
        job["bike"][path.split(".")[1]] = value
    told = report(job, with_bands=False)["attitude"]["words"]
    assert ("is assumed: read the sags" in told) == asked, told
    assert ("To bring front against rear back" in told) != asked, told


BUILT = {"rate": "8.8 N/mm", "preload": "15 mm", "gap_left": "130 mm", "gap_right": "130 mm"}
