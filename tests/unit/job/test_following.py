"""A reading that follows another: it moves with it, by all of that one's +/- and its own; a right leg's gap, a stroke over travel."""

import numpy as np
import pytest

from calc.job import load
from calc.model.draws import drawn, own_reading, stepped
from tests.support.documents import demo
from tests.support.plain import report

# what follows, what it follows, what nothing of its own is entered for: the +/- of the followed one [internal unit], its own
CASES = [
    ("front.gap_right", "front.gap_left", {"front.gap_left": {"value": "126 mm", "plus_minus_95": "6 mm", "origin": "measured"}, "front.gap_right": None}, 6.0, 0.0),
    (
        "front.collapsed_stroke", "front.travel",
        {"front.travel": {"value": "300 mm", "plus_minus_95": "4 mm", "origin": "measured"}, "front.collapsed_stroke": None}, 4.0, 8.0,
    ),
    (
        "front.second_pressure", "front.air_pressure",
        {"front.air": "air leg", "front.second": "yes", "front.air_pressure": {"value": "9 bar", "plus_minus_95": "0.5 bar", "origin": "measured"}}, 0.05, 0.3,
    ),
]  # fmt: skip


@pytest.mark.parametrize(("path", "followed", "changes", "theirs", "own"), CASES)
def test_what_follows_keeps_the_plus_minus_that_it_follows_and_adds_its_own(path, followed, changes, theirs, own):
    job = load(demo(changes))
    reading = job.fields[path].reading
    assert job.fields[followed].reading.plus_minus_95 == pytest.approx(theirs)
    assert reading.plus_minus_95 == pytest.approx(theirs + own)
    assert own_reading(job, path)[0].plus_minus_95 == pytest.approx(own)


@pytest.mark.parametrize(("path", "followed", "changes", "theirs", "own"), CASES)
def test_its_draws_are_those_it_follows_with_its_own_on_top(path, followed, changes, theirs, own):
    samples = drawn(load(demo(changes)), 2000).samples
    apart = samples[path] - samples[followed]
    assert np.std(samples[followed]) == pytest.approx(theirs / 2.0, rel=0.02), "normal, as it was entered"
    assert np.std(apart) == pytest.approx(own / 3**0.5, rel=0.02, abs=1e-12), "rectangular, as it is assumed"
    assert abs(np.corrcoef(samples[followed], apart + 1e-9 * np.arange(2000))[0, 1]) < 0.1
    assert np.std(samples[path]) == pytest.approx(np.hypot(theirs / 2.0, own / 3**0.5), rel=0.05)


@pytest.mark.parametrize(("path", "followed", "changes", "theirs", "own"), CASES)
def test_a_step_of_what_is_followed_moves_what_follows_as_far(path, followed, changes, theirs, own):
    samples = stepped(load(demo(changes)), [followed]).samples
    assert np.ptp(samples[followed]) == pytest.approx(theirs)
    assert np.ptp(samples[path]) == pytest.approx(theirs)
    del own


def test_the_right_leg_s_band_is_the_left_one_s_where_it_follows():
    """A leg that was not read is as unsure as the one it stands for: both widen the force at full travel."""

    def half(plus_minus):
        changes = {
            "front.gap_left": {"value": "126 mm", "plus_minus_95": plus_minus, "origin": "measured"},
            "front.gap_right": None,
        }
        return report(demo(changes))["ends"]["front"]["as_found"]["setup"]["end_force"]["plus_minus_95"]

    assert half("20 mm") > 1.5 * half("1 mm")
