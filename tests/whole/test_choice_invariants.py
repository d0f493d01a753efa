"""What a bench takes for granted of any choice, over all kinds of riding and riders from light to heavy in steps of a kilogram.

Common practice, no source.
"""

import numpy as np
import pytest

from calc.job import load
from calc.job.starter import start
from calc.model import end_loads
from calc.practice import AXLES, USES, usual
from calc.sizing.choice import other_riders, size_end

LIGHT, HEAVY = 0.6, 1.5  # times the standard rider


def standard_job(use: str, **changes):
    document = start(use, f"{usual('standard rider', use).typical} kg")
    for path, value in changes.items():
        group, _, key = path.partition("__")
        document.setdefault(group, {})[key] = {"value": value, "origin": "stated"}
    return load(document)


def riders(use: str) -> np.ndarray:
    typical = usual("standard rider", use).typical
    return np.arange(round(LIGHT * typical), round(HEAVY * typical) + 1, dtype=float)


@pytest.mark.parametrize("axle", AXLES)
@pytest.mark.parametrize("use", USES)
def test_the_standard_rider_keeps_what_is_in(use, axle):
    """All assumed: what is in stays, the sags are typical, no spacer is cut and no oil added."""
    job = standard_job(use)
    done = size_end(job, axle)
    setup, rider = done.sized.setup.at(done.choice), done.sized.figures.at(done.choice).rider
    assert bool(done.decision.kept)
    assert int(done.decision.best) == done.choice, "and nothing else would be nearer"
    assert done.decision.outside(done.choice) == []
    assert float(setup.preload) == pytest.approx(float(done.found_setup.preload), abs=1.0)
    assert float(setup.gap) == pytest.approx(float(done.found_setup.gap), abs=1.0)
    travel = job.number(f"{axle}.travel")
    sag = float(rider.stroke if axle == "front" else rider.travel)
    assert 100.0 * sag / travel == pytest.approx(usual(f"rider sag {axle}", use).typical, abs=1.0)


@pytest.mark.parametrize("axle", AXLES)
@pytest.mark.parametrize("use", USES)
def test_a_heavier_rider_never_gets_a_softer_spring(use, axle):
    job = standard_job(use)
    rates = other_riders(job, axle, size_end(job, axle), riders(use))
    assert np.all(np.isfinite(rates))
    assert np.all(np.diff(rates) >= 0)


@pytest.mark.parametrize("axle", AXLES)
@pytest.mark.parametrize("use", USES)
def test_the_spring_follows_the_load(use, axle):
    """Relative change of rate over relative change of sprung load: from 0.5 to 1.5, but for the step that springs are sold in and
    for what is in, which stays within a step."""
    job = standard_job(use)
    done, masses = size_end(job, axle), riders(use)
    fitted = float(done.found_setup.rate)
    loads = np.asarray(end_loads(job, axle, masses).aboard) / float(np.asarray(done.inputs.loads.aboard)) - 1.0
    rates = other_riders(job, axle, done, masses) / fitted - 1.0
    room = 0.51 * job.number(f"{axle}.step") / fitted
    changed = np.abs(rates) > 1e-9
    assert np.count_nonzero(changed) > 5
    assert np.all((np.abs(rates) <= 1.5 * np.abs(loads) + room)[changed])
    assert np.all((np.abs(rates) >= 0.5 * np.abs(loads) - room)[changed])
    assert np.all(np.sign(rates[changed]) == np.sign(loads[changed]))
    stays = np.abs(loads[~changed]) * 0.5 - room
    assert np.all(stays <= done.step / fitted), "what stays is off by less than a step"


@pytest.mark.parametrize("axle", AXLES)
@pytest.mark.parametrize("use", USES)
def test_many_riders_at_once_choose_as_each_on_a_job_of_their_own(use, axle):
    job = standard_job(use)
    done, typical = size_end(job, axle), usual("standard rider", use).typical
    masses = np.round(np.array([0.75, 1.0, 1.3]) * typical)
    together = other_riders(job, axle, done, masses)
    for mass, rate in zip(masses, together, strict=True):
        own = size_end(load(start(use, f"{mass:.0f} kg")), axle)
        assert float(own.sized.setup.rate[own.choice]) == pytest.approx(float(rate)), mass
