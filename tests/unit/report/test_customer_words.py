"""What a customer is told: the worked readings, and every word against the numbers beside it."""

from __future__ import annotations

import re
from random import Random

import pytest

from calc.job.customer import FRONT
from calc.practice import usual
from calc.report.customer import my_bike, verdict_text
from calc.report.customer_words import (
    LEAST,
    LEAST_FRONT,
    NO_SAG,
    PLAIN,
    claim_words,
    height_words,
    of_hundred,
    open_words,
    told_chance,
)
from calc.report.types import Verdict
from tests.support.how_many import TIMES
from tests.support.said import said, told, verdict_text_of


# Readings and findings as a bench would put them; common practice, no source. The chances are the numbers' own.
def test_too_much_rider_sag_with_ordinary_free_sag_is_a_soft_spring():
    found = told((625, 591, 600, 496, 506))
    assert found.finding == "soft"
    # 96 in 100 by a brute-force weighing of 400 000 bikes: plainly, that is.
    assert 0.94 <= found.chance <= 0.98
    assert found.claim == "too soft"
    assert re.search(r"at least \d+ chances in \d+", found.rest)
    assert "More preload brings the height back" in found.height
    assert found.do_not == "Do not order a spring yet."
    assert "Book a weigh-in" in found.do_not_more
    assert [sag.middle.text for sag in found.sags] == ["30", "124"]


def test_both_sags_where_they_usually_are_is_a_spring_that_suits():
    found = told((625, 588, 596, 517, 527))
    assert found.finding == "suits"
    assert "the spring is not the reason" in found.do_not_more
    assert told((625, 588, 596, 517, 527), standard__shock_spring="as sold").chance > found.chance


def test_readings_far_apart_are_something_that_sticks():
    found = told((625, 598, 612, 508, 526))
    assert found.finding == "sticks"
    assert found.chance is None
    assert "differ by 18 mm" in found.words or "14 and 18 mm" in found.words
    assert "something sticks" in found.words


def test_too_little_rider_sag_with_much_free_sag_is_a_stiff_spring():
    # A light rider on a bike as sold: the height was let down until it felt right.
    found = told((625, 575, 581, 527, 535), rider="58", standard__shock_spring="as sold")
    assert found.finding == "stiff"
    assert found.chance > LEAST


@pytest.mark.parametrize("rider", [60, 75, 90, 105])
def test_a_heavier_rider_never_makes_a_spring_stiffer(rider):
    light, heavy = (
        told((625, 588, 596, 517, 527), rider=str(mass), standard__shock_spring="as sold").chances for mass in (rider, rider + 10)
    )
    assert heavy.stiffer >= light.stiffer - 0.02
    assert heavy.softer <= light.softer + 0.02


def test_a_bike_at_its_top_has_no_free_sag_and_is_judged_all_the_same():
    found = told((520, 521, 522, 486, 489), use="road", rider="84")
    assert found.sags[0].middle.text == "0"
    assert found.finding in ("soft", "suits", "stiff", "open")


def test_readings_that_fit_no_bike_get_no_verdict():
    found = told((1000, 960, 968, 260, 268))
    assert found.finding == "odd"
    assert found.chance is None
    assert found.height == ""


def test_units_change_nothing():
    inches = [f"{length / 25.4:.4f} in" for length in (625, 591, 600, 496, 506)]
    assert told(inches, rider="189.6 lb").chance == pytest.approx(told((625, 591, 600, 496, 506)).chance, abs=0.03)


FRACTION = re.compile(r"(about|at least) (\d+) chances in (\d+)")


def check(found: Verdict) -> None:
    """Every sentence of a verdict against its numbers."""
    free, rider = found.sags
    low, high = round(free.usual.low), round(free.usual.high)
    assert found.words == f"{found.opening} {found.claim} {found.rest}"
    assert not re.search(r"nan|inf|None|[{}]|-\d", " ".join([found.words, found.height, *found.how]))
    assert "N/mm" not in verdict_text_of(found), "no rate for a customer"
    fraction = FRACTION.search(found.rest)
    if found.finding in ("soft", "suits", "stiff"):
        ways = {"soft": found.chances.stiffer, "suits": found.chances.keep, "stiff": found.chances.softer}
        assert found.chance == ways[found.finding] == max(ways.values()) >= (LEAST_FRONT if found.axle == "front" else LEAST)
        assert ("probably" in found.claim) == (found.chance < PLAIN)
        suits = "suit" if found.axle == "front" else "suits"
        assert {"soft": "too soft", "suits": suits, "stiff": "too stiff"}[found.finding] in found.claim
        how, times, out_of = fraction.groups()
        assert (int(times), int(out_of)) == (found.times, found.out_of)
        assert abs(int(times) / int(out_of) - found.chance) < 0.0501
        assert (how == "at least") == (found.chance >= PLAIN)
        assert ("Do not order" in found.do_not) == (found.finding != "suits")
        assert ("yet" in found.do_not) == (found.finding != "suits" or found.chance < PLAIN)
    else:
        assert fraction is None
        assert (found.times, found.out_of, found.chance) == (0, 0, None)
        assert "can't tell" in found.claim
    if found.finding == "open":
        assert max(found.chances.softer, found.chances.keep, found.chances.stiffer) < (
            LEAST_FRONT if found.axle == "front" else LEAST
        )
        for may, chance in (
            ("be too soft", found.chances.stiffer),
            ("suit you", found.chances.keep),
            ("be too stiff", found.chances.softer),
        ):
            if may not in found.rest and may.removeprefix("be ") not in found.rest:
                assert chance < LEAST / 2
    if found.height:
        aboard = (round(rider.usual.low), round(rider.usual.high))
        check_height(found.height, (float(free.middle.text), float(rider.middle.text)), (low, high), aboard)
    if found.how:
        parts = [int(number) for number in re.findall(r"on (\d+)", found.how[1])]
        assert sum(parts) == 100
        assert abs(parts[0] / 100 - found.chances.stiffer) < 0.02
    whose, other = ("fork springs", "rear spring") if found.axle == "front" else ("rear spring", "fork springs")
    assert whose in found.words
    assert other not in " ".join([found.words, found.height, found.do_not, found.do_not_more, found.narrows])
    for sag in found.sags:
        assert abs(sag.middle.value - (sag.first.value + sag.second.value) / 2) <= 3.0


def check_height(words: str, sags: tuple[float, float], usual: tuple[int, int], aboard: tuple[int, int]) -> None:
    free, rider = sags
    in_both = usual[0] <= free <= usual[1] and aboard[0] <= rider <= aboard[1]
    assert not (in_both and "turn it" in words), "both sags are usual: the preload stays"
    if "both sags are usual" in words:
        assert in_both
        told = [int(number) for number in re.findall(r"\d+", words)]
        assert told == [rider, *aboard, free, *usual]
        return
    wanted = float(re.search(r"(?:on is|sag,) (\d+)", words)[1])
    if "is right" in words:
        assert abs(rider - wanted) <= 7.0
    else:
        assert ("More preload" in words) == (rider > wanted)
    left = re.search(r"(?:about|sags) (\d+) mm", words)
    if left is None:
        assert "almost no sag" in words
    elif "which is usual" in words:
        assert usual[0] <= int(left[1]) <= usual[1]
    else:
        assert not usual[0] <= int(left[1]) <= usual[1]
        assert int(left[1]) >= min(NO_SAG, usual[0])


@pytest.mark.timeout(300 * TIMES)
def test_every_verdict_agrees_with_its_numbers():
    """A walk over kinds of riding, riders and sags, usual and not."""
    rng, seen = Random("walk"), set()
    for _ in range(90 * TIMES):
        use = rng.choice(["enduro", "motocross", "road", "adventure", "track", "two-up", "trials"])
        travel = {"enduro": 305, "motocross": 310, "adventure": 215, "two-up": 215, "trials": 170}.get(use, 130)
        free, rider, apart = travel * rng.uniform(-0.005, 0.2), travel * rng.uniform(0.15, 0.45), rng.choice([2, 4, 6, 9])
        weight = rng.uniform(58, 115)
        if rng.random() < 0.5:  # as the trade has it
            rows = (usual(f"{row} rear", use) for row in ("free sag", "rider sag"))
            free, rider = (travel * rng.uniform(row.low, row.high) / 100 for row in rows)
            weight, apart = usual("standard rider", use).typical, 3
        taped = [600.0, *(600 - free + turn * apart for turn in (-1, 1)), *(600 - rider + turn * apart for turn in (-1, 1))]
        more = {"standard__shock_spring": rng.choice(["as sold", "changed"])} if rng.random() < 0.5 else {}
        found = my_bike(said([f"{one:.0f}" for one in taped], use, f"{weight:.0f}", **more))
        if found.verdict is None:
            assert found.problems
            continue
        check(found.verdict)
        seen.add(found.verdict.finding)
    assert seen >= {"soft", "suits", "stiff", "open", "sticks"}, seen


@pytest.mark.timeout(300 * TIMES)
def test_every_verdict_on_the_front_agrees_with_its_numbers():
    """The same walk along the leg; the rear's verdict is what it is without the front."""
    rng, seen = Random("front walk"), set()
    rear = (625, 588, 596, 517, 527)
    for number in range(40 * TIMES):
        use = rng.choice(["enduro", "motocross", "road", "track", "trials"])
        travel = {"enduro": 300, "motocross": 305, "trials": 170}.get(use, 125)
        rows = (usual(f"{row} front", use) for row in ("free sag", "rider sag"))
        free, rider = (travel * rng.uniform(0.6 * row.low, 1.4 * row.high) / 100 for row in rows)
        apart = rng.choice([2, 4, 9]) if number % 4 == 0 else 2
        taped = [700.0, *(700 - free + turn * apart for turn in (-1, 1)), *(700 - rider + turn * apart for turn in (-1, 1))]
        weight = usual("standard rider", use).typical * rng.uniform(0.8, 1.2)
        front = dict(zip(FRONT, (f"{one:.0f}" for one in taped), strict=True)) | {
            "standard.fork_springs": rng.choice(["as sold", "changed", "unknown"])
        }
        alone = said(rear, use, f"{weight:.0f}")
        found = my_bike(alone | front)
        if found.verdict is None or found.front is None:
            assert found.problems
            continue
        if number < 4:
            assert found.verdict == my_bike(alone).verdict
        check(found.front)
        seen.add(found.front.finding)
    assert seen >= {"soft", "suits", "open", "sticks"}, seen


def test_a_front_that_was_begun_says_what_is_missing_and_leaves_the_rear():
    begun = said((625, 588, 596, 517, 527)) | {FRONT[0]: "700", FRONT[1]: "662"}
    found = my_bike(begun)
    assert found.verdict is not None
    assert found.front is None
    assert found.missing_front == FRONT[2:]
    assert "For the front, still to be said: Bike alone, front lifted" in verdict_text(found)
    assert "For the front" not in verdict_text(my_bike(said((625, 588, 596, 517, 527))))


@pytest.mark.parametrize("chance", [LEAST, 0.76, 0.8, 0.83, 0.86, 0.88, 0.91, 0.93, 0.949, PLAIN, 0.99, 1.0])
@pytest.mark.parametrize("claim", ["soft", "suits", "stiff"])
def test_a_chance_is_told_by_the_nearest_fraction(claim, chance):
    words = " ".join(claim_words(claim, chance))
    _, times, out_of = FRACTION.search(words).groups()
    off = abs(int(times) / int(out_of) - chance)
    assert all(off <= abs(a / b - chance) + 1e-12 for a, b in ((3, 4), (5, 6), (9, 10), (19, 20)))
    assert (int(times), int(out_of)) == told_chance(chance)
    assert ("probably" in words) == (chance < PLAIN)


def test_parts_of_a_hundred_add_up():
    rng = Random(3)
    for _ in range(200):
        cuts = sorted(rng.random() for _ in range(2))
        parts = of_hundred({"soft": cuts[0], "suits": cuts[1] - cuts[0], "stiff": 1 - cuts[1]})
        assert sum(parts.values()) == 100
        assert all(
            abs(part - 100 * share) < 1
            for part, share in zip(parts.values(), (cuts[0], cuts[1] - cuts[0], 1 - cuts[1]), strict=True)
        )


def test_what_lies_open_is_named():
    assert "suit you, or be too soft" in open_words({"soft": 0.4, "suits": 0.55, "stiff": 0.05})[2]
    assert "be too soft or be too stiff" in open_words({"soft": 0.35, "suits": 0.4, "stiff": 0.25})[2]


@pytest.mark.parametrize(
    ("found", "free", "then", "words"),
    [
        (124, 30, 11, "It leaves about 11 mm without you; 21 to 43 is usual."),
        (124, 30, 3, "It leaves almost no sag without you"),
        (124, 30, 4.6, "It leaves about 5 mm without you; 21 to 43 is usual."),
        (124, 30, 25, "It leaves about 25 mm without you, which is usual."),
        (90, 30, 50, "Less preload"),
        (104, 30, 30, "Leave the preload. Without you it sags 30 mm, which is usual."),
        (104, 2, 2, "There is almost no sag without you"),
        (
            112,
            30,
            20,
            "Leave the preload: both sags are usual. With you on it sags 112 mm; 98 to 113 is usual. Without you it sags 30 mm; 21 to 43 is usual.",
        ),
        (97, 30, 20, "Less preload"),
        (112, 20, 10, "turn it up until"),
        (114, 30, 20, "turn it up until"),
    ],
)
def test_the_height_comes_first_and_its_price_is_said(found, free, then, words):
    assert words in height_words(found, 104.0, 6.0, free, then, (21.4, 42.7), (98.0, 113.0))


def test_topped_out_twice_changes_nothing():
    one, other = (told((520, a, b, 486, 489), use="road", rider="84") for a, b in ((520, 520), (521, 523)))
    assert one.chance == other.chance
