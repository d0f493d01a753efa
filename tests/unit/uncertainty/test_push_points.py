"""The points of a bench push correct readings of the leg: against a grid over plain arithmetic, scipy, and legs whose truth is known."""

from __future__ import annotations

from random import Random

import numpy as np
import pytest

from calc.job import load
from calc.model.draws import is_fit_off
from calc.model.observed import sags_read
from calc.sizing.margins import moved_readings
from calc.uncertainty.corrected import sags_found, shown_reading
from calc.uncertainty.push_points import correcting
from calc.uncertainty.question import Question
from tests.support.documents import changed
from tests.support.hand_push import GAS, PISTON, Leg, made_up, made_up_push, slow_force
from tests.support.how_many import TIMES
from tests.support.sagging import SAGS

STROKES = (150, 200, 240, 262, 278)
EXACT = {
    "front.washers_volume": {"value": "0 ml", "plus_minus_95": "0"},
    "front.push_friction": {"value": "0 N", "plus_minus_95": "0"},
    "front.push_scale": {"value": "0", "plus_minus_95": "0"},
}


def points(leg: Leg, state: str = "as built", off: float = 0.0) -> str:
    return "; ".join(f"{s} {slow_force(leg, state, float(s)) + off:.2f}" for s in STROKES)


def only_the_gap(half: float, error: float) -> tuple[Leg, dict]:
    """A leg of which all is known exactly but its gap, which was read 6 mm too large."""
    leg, document = made_up(Random("grid"), GAS, True, exact=True)
    for group in ("bike", "rider", "standard", "front", "rear", "place"):
        for key, entry in document.get(group, {}).items():
            if isinstance(entry, dict) and "plus_minus_95" in entry:
                document[group][key] = entry | {"plus_minus_95": "0"}
    gap = {"value": f"{leg.gap + 6:.6f} mm", "plus_minus_95": f"{half} mm"}
    entries = {
        "front.gap_left": gap,
        "front.push_points": points(leg),
        "front.push_error": f"{error} N",
        "front.push_stroke_error": "0.1 mm",
    }
    return leg, changed(document, EXACT | entries)


def test_the_gap_is_that_of_a_grid_over_plain_arithmetic():
    """Bayes on a grid of gaps, the force by Boyle's law number by number; a stroke's error as what it makes of the force."""
    half, error = 20.0, 12.0
    leg, document = only_the_gap(half, error)
    read, gaps = leg.gap + 6, np.linspace(leg.gap - 15, leg.gap + 25, 1601)
    found = sags_found(load(document))
    forces = [slow_force(leg, "as built", float(s)) for s in STROKES]
    missed, wide = np.zeros_like(gaps), np.zeros_like(gaps)
    for s, force in zip(STROKES, forces, strict=True):
        there = []
        for gap in gaps:
            leg.gap = gap
            there.append([slow_force(leg, "as built", s + step) for step in (0.0, 0.1)])
        expected, further = np.array(there).T
        variance = (error / 2) ** 2 + (0.05 * (further - expected) / 0.1) ** 2
        missed, wide = missed + (force - expected) ** 2 / variance, wide + np.log(variance)
    missed += ((gaps - read) / (half / 2)) ** 2
    weight = np.exp(-0.5 * (missed + wide))
    weight /= weight.sum()
    mean = float(weight @ gaps)
    off = float(weight @ (gaps - mean) ** 2) ** 0.5
    after = found.fields["front.gap_left"]
    # The value is the most probable one, gap and strokes together; the draws are of the gap whatever the strokes were.
    assert after.reading.value == pytest.approx(gaps[np.argmin(missed)], abs=0.05 * off)
    assert np.mean(after.samples) == pytest.approx(mean, abs=0.2 * off)
    assert 2.0 * np.std(after.samples) == pytest.approx(2.0 * off, rel=0.12)
    assert found.by == ("push",)


def test_sags_and_push_together_agree_with_scipy():
    from scipy.optimize import least_squares

    leg, document = made_up(Random("both"), PISTON, True)
    entries = {
        "front.push_points": points(leg, off=20.0),
        "front.gap_left": None,
        "rear.leverage": None,
        "rear.leverage_fall": None,
    }
    job = load(changed(document, entries | {f"rear.{name.removeprefix('rear_')}": value for name, value in SAGS.items()}))
    push, why = correcting(job)
    assert push is not None, why
    paths = tuple(path for path in moved_readings(job) if not is_fit_off(path))
    asked = Question(job, sags_read(job, "rear"), paths, push, tuple(range(len(STROKES))))
    seen = asked.observed()
    best = asked.answered().best

    def off(z):
        return np.concatenate([z, (asked.model(z[:, None])[:, 0] - seen.value) / seen.uncertainty])

    there = least_squares(off, np.zeros(len(asked.names)), x_scale=1.0, xtol=1e-10)
    assert np.sum(off(best) ** 2) == pytest.approx(2.0 * there.cost, abs=0.02)
    assert best == pytest.approx(there.x, abs=0.05)
    found = sags_found(job)
    assert found.by == ("sags", "push")
    assert {"front.gap_left", "rear.leverage"} <= {one.path for one in found.corrections}


@pytest.mark.timeout(600)
@pytest.mark.parametrize("fill", [GAS, PISTON])
def test_bands_hold_the_truth_of_made_up_legs(fill):
    """Legs as in `support/hand_push.py`, pushed as built, read as well as their job says: 92 to 98 % of gaps and charges lie in their
    bands. The gap was read to 10 mm, so that the push has something to say. STANCHION_MORE multiplies the number.
    """
    count, held, narrowed = 160 * TIMES, {"gap": 0, "charge": 0}, 0
    for number in range(count):
        case, rng = made_up_push(f"band {number}", fill, "as built"), Random(f"gap {number}")
        gap = {"value": f"{case.leg.gap + rng.gauss(0, 5):.4f} mm", "plus_minus_95": "10 mm"}
        job = load(changed(case.document, {"front.gap_left": gap}))
        found = sags_found(job)
        assert not found.push_refused or "do not fit" in found.push_refused
        corrected = found.correct(job)
        for what, path, truth in (
            ("gap", "front.gap_left", case.leg.gap),
            ("charge", "front.cartridge_charge", case.leg.charge),
        ):
            told = shown_reading(corrected.fields[path])
            held[what] += abs(truth - told.value) <= told.plus_minus_95
            narrowed += what == "gap" and told.plus_minus_95 < 6.0
    assert narrowed > 0.6 * count, narrowed
    room = max(2.6 * (0.95 * 0.05 / count) ** 0.5, 0.03)
    for what, times in held.items():
        assert 0.95 - room <= times / count <= 0.95 + room, (what, times / count)


def sealed(**changes: object) -> dict:
    leg, document = made_up(Random("sealed"), GAS, True)
    entries: dict = {
        "front.push_points": points(leg, off=20.0),
        "front.gap_left": {"value": f"{leg.gap + 7:.1f} mm", "plus_minus_95": "8 mm"},
    }
    return changed(document, entries | {f"front.{key}": value for key, value in changes.items()})


def test_the_answer_follows_with_draws_and_without_and_what_was_typed_stays():
    job = load(sealed())
    slow, fast = sags_found(job), sags_found(job, with_draws=False)
    assert slow.applied
    for path, one in slow.fields.items():
        assert fast.fields[path].reading.value == one.reading.value
        was = job.fields[path]
        assert (one.text, one.number, one.plus_minus, one.origin) == (was.text, was.number, was.plus_minus, was.origin)
    assert slow.correct(job).number("front.gap_left") < job.number("front.gap_left") - 4.0


def test_it_can_be_refused_without_the_sags_and_the_sags_without_it():
    sags = {f"rear.{name.removeprefix('rear_')}": value for name, value in SAGS.items()} | {"rear.leverage": None}
    compared = load(changed(sealed(push_correct="no"), sags))
    assert sags_found(compared).by == ("sags",)
    by_push = load(changed(sealed(), sags | {"bike.sags_correct": "no"}))
    found = sags_found(by_push)
    assert found.by == ("push",)
    assert len(found.compared) == 2
    assert found.correct(by_push).number("rear.leverage") == by_push.number("rear.leverage")
    assert found.correct(by_push).number("front.gap_left") != by_push.number("front.gap_left")
    neither = load(changed(sealed(push_correct="no"), sags | {"bike.sags_correct": "no"}))
    assert sags_found(neither).correct(neither) is neither


@pytest.mark.parametrize(
    ("changes", "word"),
    [
        ({"cartridge_state": None}, "Say which condition"),
        ({"cartridge_state": "opened into one"}, "open by now"),
        ({"cartridge_state": "seal leaking"}, "do not fit"),
        ({"collapsed_stroke": "270 mm", "travel": "265 mm"}, "fully collapsed at 270 mm"),
    ],
)
def test_a_push_that_says_nothing_of_the_leg_as_entered_corrects_nothing_and_says_why(changes, word):
    found = sags_found(load(sealed(**changes)))
    assert word in found.push_refused
    assert not found.fields


def test_a_leak_beside_a_vented_piston_has_another_gap_now_than_while_it_was_shut():
    leg, document = made_up(Random("vented"), PISTON, True)
    entries = {
        "front.cartridge_state": "seal leaking",
        "front.piston_back": "vented",
        "front.push_points": points(leg, "seal leaking"),
    }
    found = sags_found(load(changed(document, entries)))
    assert "the gap set while the cartridge was shut" in found.push_refused


def test_one_point_misread_is_left_out_and_named():
    leg, document = made_up(Random("slip"), PISTON, True)
    read = points(leg, off=20.0).split("; ")
    stroke, force = read[2].split()
    read[2] = f"{stroke} {float(force) * 1.12:.1f}"
    found = sags_found(load(changed(document, {"front.push_points": "; ".join(read), "front.push_error": "2 N"})))
    assert [one.point for one in found.points if not one.believed] in ([2], []), found.points
    assert found.push_refused or not found.points[2].believed
