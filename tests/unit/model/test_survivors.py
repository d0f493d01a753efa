"""Draws that cannot be are left out, each for itself: those that the laws point at, and those that must be searched for."""

import numpy as np
import pytest

from calc.impossible import Impossible
from calc.job import load
from calc.job.starter import start
from calc.model.draws import drawn
from calc.model.inputs import end_inputs
from calc.model.survivors import picked, survivors
from calc.sizing.air_pressure import pressure_for_sag

DRAWS = 60
# New jobs of air forks of which little is known, and so much of that is at odds that many draws cannot be.
BIKES = {"no pressure": ("youth", {"air_coil": "yes"}), "no equilibrium": ("road", {"air_pressure": "3 bar"})}


def sized(some) -> None:
    here = end_inputs(some, "front")
    pressure_for_sag(here.assembly, here.standard_setup, here.loads.aboard, here.targets.sag)


@pytest.mark.parametrize("bike", BIKES)
def test_left_out_are_those_that_cannot_be_one_by_one(bike):
    use, front = BIKES[bike]
    draws, runs = drawn(load(start(use, "80 kg") | {"front": {"air": "air leg", **front}}), DRAWS), []

    def counted(some) -> None:
        runs.append(some)
        sized(some)

    kept, left_out, _ = survivors(draws, DRAWS, counted)
    alone = [column for column in range(DRAWS) if works(picked(draws, np.array([column])))]
    assert 0 < left_out == DRAWS - len(alone) < DRAWS
    for path, values in kept.samples.items():
        assert np.array_equal(values, np.asarray(draws.samples[path])[alone])
    assert len(runs) < left_out, "they were searched for one by one"


def works(some) -> bool:
    try:
        sized(some)
    except Impossible:
        return False
    return True


def test_a_law_that_points_at_nothing_is_searched_by_halving():
    draws = drawn(load(start("enduro", "80 kg")), DRAWS)
    mass = np.asarray(draws.samples["rider.front_share_standing"])
    limit = np.quantile(mass, 0.9)

    def works_below(some) -> int:
        if np.any(np.asarray(some.samples["rider.front_share_standing"]) > limit):
            raise Impossible("x", "Too much.", "Take less.")
        return 1

    kept, left_out, found = survivors(draws, DRAWS, works_below)
    assert (left_out, found) == (6, None)
    assert np.all(np.asarray(kept.samples["rider.front_share_standing"]) <= limit)
