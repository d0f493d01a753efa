"""Draws against first order: together where the law is near linear, and apart where they must be, each time with the reason.

First order is JCGM 100:2008, 5.1.2: each reading moved by its own standard uncertainty. Draws are JCGM 101:2008.
"""

from dataclasses import replace
from statistics import NormalDist

import numpy as np
import pytest
from scipy.stats import truncnorm

from calc.demo import jobs
from calc.end.figures import evaluate
from calc.end.preload import preload_for_sag
from calc.end.setup import Setup
from calc.job import Job, load
from calc.model.draws import drawn, fit_offs, half_width, is_drawn, own_reading, stepped
from calc.model.inputs import EndInputs, end_inputs
from calc.model.spread import deviation, drawn_uncertainty
from calc.model.survivors import survivors
from calc.quantities.reading import Origin, Reading, Spread
from calc.sizing.choice import size_end
from calc.sizing.coil import size
from calc.uncertainty.bands import bands
from tests.support.documents import demo
from tests.support.plain import report

COUNT = 1000
RESULTS = ("free sag", "rider sag", "frequency", "wheel rate", "end force", "landing energy", "preload", "gap")


def first_order(job: Job, work) -> dict[str, np.ndarray]:
    """The effect of each uncertain reading on each result, one a column: half of what one step up and one down are apart."""
    paths = [path for path, found in job.fields.items() if is_drawn(found) and own_reading(job, path)[0].plus_minus_95 > 0]
    paths += fit_offs(job)
    moved = {name: np.broadcast_to(values, (2 * len(paths),)) for name, values in work(stepped(job, paths)).items()}
    return {name: (values[: len(paths)] - values[len(paths) :]) / 2.0 for name, values in moved.items()}


def results_of(end: str, setup: Setup, limits, here: EndInputs) -> dict[str, np.ndarray]:
    """What a setup does, and the preload and gap solved again for its springs. Free sag is followed on below 0, where it is a bound."""
    done = evaluate(here.assembly, setup, here.loads, here.exponent)
    solved = size(here.assembly, np.array([[setup.rate]]), here.loads, here.exponent, here.targets, limits, setup.split)
    figures = (done.free.travel_unbounded, done.rider.travel, done.frequency, done.wheel_rate, done.end_force, done.energy)
    told = dict(zip(RESULTS, (*figures, solved.exact.preload[0], solved.exact.gap[0]), strict=True))
    return {name: told[name] for name in RESULTS if end == "front" or name != "gap"}


@pytest.mark.parametrize("end", ["front", "rear"])
@pytest.mark.parametrize("name", list(jobs()))
def test_the_demo_jobs_are_near_linear(name, end):
    """Springs, levers and gas far from its end: draws and first order within 6 % for every result, 8 % at full travel.

    Their correlations too: results share most of their readings, and both ways must say so alike.
    """
    job = load(jobs()[name])
    done = size_end(job, end)
    setup, targets = done.sized.setup.at(done.choice), done.inputs.targets
    # Whether the oil that is in stays is decided once, as the answer decides it.
    kept = None if targets.gap_found is None else np.isclose(done.sized.exact.gap, targets.gap_found)[done.choice, None]

    def work(some: Job) -> dict[str, np.ndarray]:
        here = end_inputs(some, end)
        return results_of(end, setup, done.limits, replace(here, targets=replace(here.targets, gap_stays=kept)))

    effects, samples = first_order(job, work), work(drawn(job, COUNT))
    for result, effect in effects.items():  # at full travel the gas is squeezed most, and least near a straight line
        within = 0.08 if result in ("end force", "landing energy") else 0.06
        assert float(np.std(samples[result])) == pytest.approx(float(np.sqrt(effect @ effect)), rel=within), result
    stacked = np.stack(list(effects.values()))
    covariance = stacked @ stacked.T
    expected = covariance / np.sqrt(np.outer(np.diag(covariance), np.diag(covariance)))
    assert np.corrcoef(np.stack([samples[result] for result in effects])) == pytest.approx(expected, abs=0.1)


def only(path: str, value: float, half: float) -> Job:
    """The first demo job with one reading [internal units] that is not known exactly, and every other known exactly."""
    job = load(demo())
    fields = {p: replace(f, reading=replace(f.reading, plus_minus_95=0.0)) if f.reading else f for p, f in job.fields.items()}
    found = fields[path]
    fields[path] = replace(found, reading=replace(found.reading, value=value, plus_minus_95=half))
    return replace(job, fields=fields)


@pytest.mark.parametrize("spread", list(Spread))
@pytest.mark.parametrize(("value", "half"), [(1.33, 0.07), (1.4, 0.1), (1.36, 0.2), (1.02, 0.1), (1.2, 0.02), (1.3, 1.0)])
def test_the_exponent_moves_by_the_spread_that_it_is_drawn_with(value, half, spread):
    """Cut off at 1.0 and 1.4; scipy's truncated normal beside it, the draws themselves, and the two columns of first order."""
    reading = Reading(value, half, Origin.ASSUMED, spread)
    sigma = half / 2.0
    expected = truncnorm((1.0 - value) / sigma, (1.4 - value) / sigma, loc=value, scale=sigma).std()
    assert drawn_uncertainty("place.exponent", reading) == pytest.approx(expected, rel=1e-9)
    assert float(np.std(deviation("place.exponent", reading, 4000))) == pytest.approx(expected, rel=5e-3)
    up, down = stepped(only("place.exponent", value, half), ["place.exponent"]).samples["place.exponent"]
    assert up - down == pytest.approx(2.0 * expected, rel=1e-9)
    assert 1.0 - 1e-12 <= down < up <= 1.4 + 1e-12


def test_the_exponent_s_share_is_its_share_of_the_draws():
    """The end force's variance with the exponent alone drawn, over that with all drawn: the share that "measure next" tells."""
    job = load(demo())
    done = size_end(job, "front")
    setup = done.sized.setup.at(done.choice)

    def multiple(some: Job) -> np.ndarray:
        here = end_inputs(some, "front")
        return evaluate(here.assembly, setup, here.loads, here.exponent).end_multiple

    whole = drawn(job, 4000)
    alone = replace(whole, samples={"place.exponent": whole.samples["place.exponent"]})
    share = np.var(multiple(alone)) / np.var(multiple(whole))
    causes = {cause.path: cause.share for cause in bands(job, "front", done).causes["end_multiple"]}
    assert causes["place.exponent"] == pytest.approx(share, rel=0.1)


CAP, CAP_HALF = 20000.0, 12000.0  # mm3


def test_near_hydraulic_lock_draws_and_first_order_rightly_part():
    """With the last gas nearly gone the end force goes as 1 / (what is left)^n: a cap 12 ml larger costs far more than a cap
    12 ml smaller saves. First order sees the slope in the middle alone. The truth needs no draws: the force rises steadily with
    the cap, so its 2.5 % and 97.5 % points are those of the one uncertain volume.
    """
    job = only("front.cap_volume", CAP, CAP_HALF)
    lock = float(end_inputs(job, "front").assembly.lock_gap(Setup(4.6, 0.0, 0.0)))
    found = {}
    for name, spare in (("wide", 60.0), ("near", 12.5)):

        def end_force(some: Job, gap: float = lock + spare) -> dict[str, np.ndarray]:
            here = end_inputs(some, "front")
            return {"end force": np.asarray(evaluate(here.assembly, Setup(4.6, 3.0, gap), here.loads, here.exponent).end_force)}

        draws, left_out, _ = survivors(drawn(job, COUNT), COUNT, end_force)
        assert left_out == 0
        points = (CAP + sign * 1.96 * CAP_HALF / 2.0 for sign in (-1.0, 1.0))
        low, high = (float(end_force(only("front.cap_volume", point, 0.0))["end force"]) for point in points)
        effect = first_order(job, end_force)["end force"]
        found[name] = (half_width(end_force(draws)["end force"]), 1.96 * float(np.sqrt(effect @ effect)), (high - low) / 2.0)
    for by_draws, _, truth in found.values():
        assert by_draws == pytest.approx(truth, rel=0.03)
    assert found["wide"][1] == pytest.approx(found["wide"][2], rel=0.03)
    assert found["near"][1] < 0.75 * found["near"][2]


AXLE, AXLE_U = 59.3, 2.0  # kg
TO_SPARE = 1.3  # of AXLE_U


def test_where_preload_holds_the_bike_up_draws_and_first_order_rightly_part():
    """Sag cannot be below 0: preload holds the bike with 1.3 u of its weight to spare, so that neither a step up nor one down
    moves it off its top, and first order says that the free sag is known exactly. One bike in ten is heavy enough to settle.
    The truth: free sag rises steadily with the load once it has lifted off, so its 97.5 % point is that of the load.
    """

    def free_sag(some: Job) -> dict[str, np.ndarray]:
        here = end_inputs(some, "rear")
        done = evaluate(here.assembly, Setup(48.0, preload, 0.0), here.loads, here.exponent)
        return {"free sag": np.asarray(done.free.travel)}

    heavier = end_inputs(only("bike.rear_axle", AXLE + TO_SPARE * AXLE_U, 0.0), "rear")
    preload = float(preload_for_sag(heavier.assembly, Setup(48.0, 0.0, 0.0), heavier.loads.alone, 0.0))
    job = only("bike.rear_axle", AXLE, 2.0 * AXLE_U)
    assert float(free_sag(only("bike.rear_axle", AXLE, 0.0))["free sag"]) == 0.0
    assert first_order(job, free_sag)["free sag"] == pytest.approx([0.0], abs=1e-12)
    samples = free_sag(drawn(job, COUNT))["free sag"]
    assert float(np.mean(samples > 0.0)) == pytest.approx(1.0 - NormalDist().cdf(TO_SPARE), abs=0.005)
    truth = float(free_sag(only("bike.rear_axle", AXLE + 1.96 * AXLE_U, 0.0))["free sag"]) / 2.0
    assert half_width(samples) == pytest.approx(truth, rel=0.03)
    assert half_width(samples) > 0.5


def test_nothing_is_promised_where_first_order_does_not_hold():
    """Near lock the report still tells its bands, by draws, and asks for no reading on the strength of a slope."""
    changes = {
        "front.cap_volume": {"value": "20 ml", "plus_minus_95": "12 ml", "origin": "measured"},
        "front.end_target": "force", "front.end_force": "22 kN", "front.gap_min": "10 mm", "front.gap_max": "350 mm",
    }  # fmt: skip
    front = report(demo(changes), with_bands=True)["ends"]["front"]
    assert front["state"] == "ok", front["problems"]
    assert front["chosen"]["end_force"]["plus_minus_95"] > 0
    assert "end force over load" not in {asked["result"] for asked in front["measure_next"]}
