"""Made-up bikes with a customer at them: the verdict is right or says that it cannot tell, over friction, reading error and posture."""

from __future__ import annotations

from collections import Counter
from random import Random

import pytest

from calc.impossible import Impossible
from calc.practice import AXLES
from calc.report.customer import my_bike
from calc.report.customer_words import LEAST, LEAST_FRONT, PLAIN
from tests.support.customers import FRICTIONS, POSES, READINGS, made_up, read
from tests.support.how_many import TIMES

COUNT = {"rear": 240, "front": 120}  # a front is judged after its rear: twice the work


@pytest.mark.timeout(1800 * TIMES)
@pytest.mark.parametrize("axle", AXLES)
def test_a_verdict_is_right_or_none_in_95_of_100_and_hardly_ever_wrong_in_plain_words(axle):
    """Every combination of friction, reading error and posture comes as often. At most 5 of 100 are wrong, 2 of 100 in plain words,
    and what is claimed is right about as often as is said. STANCHION_MORE multiplies the number of bikes.
    """
    rng, seen = Random("customers"), Counter()
    sweep = [(f, r, p) for f in FRICTIONS for r in READINGS for p in POSES]
    said_sure, right, count = 0.0, 0, COUNT[axle] * TIMES
    for number in range(count):
        truth = made_up(rng, axle)
        try:
            said = read(rng, truth, *sweep[number % len(sweep)])
        except Impossible:
            continue
        found = my_bike(said)
        told = found.front if axle == "front" else found.verdict
        if told is None:
            seen["asked again"] += 1
            continue
        if told.finding not in ("soft", "suits", "stiff"):
            seen[told.finding] += 1
            continue
        assert told.chance is not None
        assert told.chance >= (LEAST_FRONT if axle == "front" else LEAST)
        plain = "plain" if told.chance >= PLAIN else "probably"
        seen[f"{plain} {'right' if told.finding == truth.says else 'wrong'}"] += 1
        said_sure, right = said_sure + told.chance, right + (told.finding == truth.says)
    claimed = sum(times for what, times in seen.items() if "right" in what or "wrong" in what)
    assert claimed > {"rear": 0.4, "front": 0.3}[axle] * count, seen
    assert seen["plain wrong"] + seen["probably wrong"] <= 0.05 * count, seen
    assert seen["plain wrong"] <= 0.02 * count, seen
    # A binomial's three standard deviations either way of what was said.
    room = 3.0 * (said_sure / claimed * (1.0 - said_sure / claimed) / claimed) ** 0.5
    assert abs(right / claimed - said_sure / claimed) < room + 0.02, (right / claimed, said_sure / claimed, seen)
