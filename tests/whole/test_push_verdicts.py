"""Verdicts of a bench push over made-up legs whose truth is known, each pushed by plain arithmetic: right, or "can't tell"."""

from __future__ import annotations

from collections import Counter
from functools import lru_cache
from random import Random

import numpy as np
import pytest

from calc.job import load
from calc.model.push_read import push_read
from calc.uncertainty.rivals import CHARGE_GONE, PushFound, push_found, settled, weighed_states
from tests.support.documents import changed
from tests.support.hand_push import GAS, PISTON, STATES, Case, made_up, made_up_push, slow_force
from tests.support.how_many import TIMES

CHUNKS, EACH = 4 * TIMES, 60
pytestmark = pytest.mark.timeout(600)


@lru_cache(maxsize=CHUNKS)
def answered(chunk: int) -> list[tuple[Case, dict[str, float], tuple[str, ...], bool]]:
    """Cases with the chance of each state, what is told, and whether any explanation fits."""
    done = []
    for number in range(chunk * EACH, (chunk + 1) * EACH):
        case = made_up_push(f"verdict {number}", (GAS, PISTON)[number % 2], STATES[number // 2 % 4])
        job = load(case.document)
        assert not job.problems, job.problems
        push = push_read(job)
        assert push is not None
        ways = weighed_states(job, push)
        told = settled({state: chance for state, (chance, way) in ways.items() if way.fits})
        chances = {state: chance for state, (chance, _) in ways.items()}
        done.append((case, chances, told, any(way.fits for _, way in ways.values())))
    return done


@pytest.mark.parametrize("chunk", range(CHUNKS))
def test_a_chunk_is_right_or_cannot_tell(chunk):
    told = [(case, told) for case, _, told, _ in answered(chunk)]
    wrong = [(case, told) for case, told in told if told and case.state not in told]
    assert len(wrong) <= 0.05 * len(told), wrong


def test_verdicts_are_right_or_cannot_tell_in_95_of_100_and_wrong_in_no_more_than_2():
    every = [one for chunk in range(CHUNKS) for one in answered(chunk)]
    kinds = Counter(
        "none fits" if not fits else "cannot tell" if not told else "right" if case.state in told else "wrong"
        for case, _, told, fits in every
    )
    assert kinds["right"] + kinds["cannot tell"] >= 0.95 * len(every), kinds
    assert kinds["wrong"] <= 0.02 * len(every), kinds
    assert kinds["none fits"] <= 0.02 * len(every), kinds
    assert kinds["right"] >= 0.4 * len(every), f"whoever never tells is never wrong: {kinds}"
    for part in ("how", "error"):
        for value in {getattr(case, part) for case, *_ in every}:
            of = [case.state in told for case, _, told, _ in every if told and getattr(case, part) == value]
            assert np.mean(of) >= 0.95, (part, value, len(of))


def test_what_is_likely_is_true_as_often_as_it_is_said():
    """Chances from 0.1 to 0.9, those without a charge together: their mean against how many were true, by the binomial's scatter."""
    said, true = [], []
    for chunk in range(CHUNKS):
        for case, chances, _, _ in answered(chunk):
            groups = {("as built",), ("oil moved",), CHARGE_GONE}
            for group in groups:
                chance = sum(chances.get(state, 0.0) for state in group)
                # Two of the four truths are of the group without a charge, as two of the four states are.
                if 0.1 < chance < 0.9:
                    said.append(chance)
                    true.append(case.state in group)
    middle, scatter = np.sum(said), np.sqrt(np.sum(np.array(said) * (1 - np.array(said))))
    assert len(said) > 60 * TIMES
    assert abs(np.sum(true) - middle) < 3.3 * scatter, (np.sum(true), middle, scatter)


@lru_cache(maxsize=1)
def found() -> list[tuple[Case, PushFound]]:
    """Cases worked out whole."""
    done = []
    for number in range(48 * TIMES):
        case = made_up_push(f"gap {number}", (GAS, PISTON)[number % 2], STATES[number // 2 % 4])
        told = push_found(load(case.document))
        assert told is not None
        done.append((case, told))
    return done


def test_the_gap_that_fits_the_true_state_is_the_gap():
    """By the points alone, the gap's own reading left aside: within its +/- as often as 95 in 100 allow."""
    inside = []
    for case, told in found():
        rival = next(one for one in told.rivals if one.state == case.state)
        if rival.gap is not None:
            inside.append(abs(rival.gap.value - case.leg.gap) <= rival.gap.half)
    assert len(inside) > 40 * TIMES
    assert np.mean(inside) > 0.88, np.mean(inside)


def test_friction_and_the_oil_moved_are_within_their_plus_minus():
    inside = []
    for case, told in found():
        rival = next(one for one in told.rivals if one.state == case.state)
        if rival.friction is not None:
            inside.append(abs(rival.friction.value - case.friction) <= rival.friction.half)
        if rival.moved is not None and rival.moved.value * case.moved > 0:
            inside.append(abs(rival.moved.value - case.moved) <= rival.moved.half)
    assert np.mean(inside) > 0.88, np.mean(inside)


def test_the_stroke_to_read_next_is_where_those_in_question_differ_most():
    """Worked out again from what is told of them: no other stroke sets the two further apart over their scatter."""
    seen = 0
    for _, told in found():
        if told.further is None or len(told.open) != 2:
            continue
        seen += 1
        one, other = told.open
        steep = [np.gradient(rival.curve, told.strokes) * told.push.stroke_off for rival in (one, other)]
        scatter = one.off**2 + other.off**2 + 2 * told.push.force_off**2 + steep[0] ** 2 + steep[1] ** 2
        apart = np.abs(one.curve - other.curve) / np.sqrt(scatter)
        tens = np.isclose(told.strokes % 10, 0)
        at = int(np.flatnonzero(told.strokes == told.further.stroke)[0])
        assert apart[at] == pytest.approx(np.nanmax(apart[tens]))
        assert told.further.half == pytest.approx(2 * np.sqrt(scatter[at]))
        assert told.further.tells == (apart[at] >= 2.0)
    assert seen > 10


def test_a_mistyped_force_is_not_believed():
    """450 for 540: whatever was the truth, that point is named or nothing is told."""
    named = 0
    for number in range(12):
        case = made_up_push(f"slip {number}", GAS, STATES[number % 4])
        points = case.document["front"]["push_points"].split("; ")
        stroke, force = points[3].split(" ")
        slip = changed(
            case.document, {"front.push_points": "; ".join([*points[:3], f"{stroke} {float(force) * 1.6:.0f}", points[4]])}
        )
        told = push_found(load(slip))
        assert not told.states, (number, told.states)
        named += bool(abs(told.rivals[0].surprise[3]) > 3.0)
    assert named >= 10


@pytest.mark.parametrize("seed", range(4))
def test_an_open_leg_is_told_its_gap(seed):
    """Read 25 mm wrong, its gap comes out of the points all the same; there is nothing to choose between."""
    leg, document = made_up(Random(f"open {seed}"), PISTON, True)
    points = "; ".join(f"{stroke} {slow_force(leg, 'opened into one', stroke) + 20:.0f}" for stroke in (150, 200, 240, 262, 278))
    entries = {"front.air": "open", "front.push_points": points, "front.gap_left": f"{leg.gap + 25:.0f} mm"}
    told = push_found(load(changed(document, entries)))
    assert told is not None
    (rival,) = told.rivals
    assert (rival.state, rival.chance, told.further) == ("open", 1.0, None)
    assert rival.gap is not None
    assert abs(rival.gap.value - leg.gap) < rival.gap.half < 15.0
