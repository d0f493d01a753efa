"""What is told of an offer: every figure in a sentence is one that stands beside it, and nothing ranks."""

from __future__ import annotations

import re
from random import Random

import pytest

from calc.boundary import to_json
from calc.demo import jobs
from calc.job import load
from calc.report import part_of, report_of
from calc.report.offer_text import NONE, offer_text
from calc.report.options import options_report
from tests.support.documents import changed
from tests.support.offers import front, offer_of, offered, random_offer, rear


def numbers(words: str) -> list[str]:
    return re.findall(r"\d+(?:\.\d+)?", words)


def report(offer, demo="trail"):
    return report_of(load(offered(offer, demo)))


def figures_of(part) -> set[str]:
    told = (part.rider_sag, part.frequency, part.end_force, part.gas_share, part.behind)
    return {text for one in told if one for text in (*numbers(one.text), *numbers(one.plus_minus_text))}


@pytest.mark.parametrize("seed", range(6))
def test_every_number_of_an_ends_words_is_one_of_its_figures(seed):
    rng = Random(f"option words {seed}")
    one = front(str(rng.randint(0, 10)), str(rng.randint(95, 130)), str(rng.choice(("3.8", "4.0", "4.2"))))
    two = one | rear(str(rng.randint(2, 14)), str(rng.choice((44, 46, 48))))
    told = report(offer_of(one, two)).options
    for option in told.options:
        for end in option.ends:
            known = figures_of(end.figures) | set(numbers(end.setup)) | (figures_of(end.change) if end.change else set())
            assert set(numbers(end.words)) <= known
            if end.change:
                for figure in (end.change.rider_sag, end.change.end_force):
                    way = "less" if figure.value < 0 else "more"
                    shown = figure.text.lstrip("−")
                    assert not float(shown) or f"{way} than as found" in end.words
    for pair in told.between:
        for row, words in zip(pair.ends, pair.words, strict=False):
            if pair.same:
                break
            known = figures_of(row.change) | {row.apart.text, row.at.text, str(pair.one), str(pair.other)}
            assert set(numbers(words)) <= known


def test_an_option_reads_to_the_digit_as_the_same_setup_once_it_is_built():
    """What was built goes another way through the report; a customer lays both sheets side by side."""
    legs = {"built_rate": "4.0", "built_preload": "5", "built_gap_left": "103", "built_gap_right": "103"}
    entries = {f"front.{key}": value for key, value in legs.items()} | {"rear.built_rate": "48", "rear.built_preload": "9"}
    ends = report_of(load(changed(jobs()["trail"], entries)), with_bands=False).ends
    (option,) = report(
        offer_of(front("5", "103") | {"setup": front("5", "103")["setup"] | rear("9", "48")["setup"]})
    ).options.options
    for told, built in zip(option.ends, (ends.front.built.setup, ends.rear.built.setup), strict=True):
        for name in ("free_sag", "rider_sag", "frequency", "end_force", "end_multiple"):
            figure, again = getattr(told.figures, name), getattr(built, name)
            assert (figure.text, figure.unit) == (again.text, again.unit), name


@pytest.mark.parametrize("seed", range(12))
def test_every_number_of_a_bills_words_is_one_of_its_amounts(seed):
    rng = Random(f"bill words {seed}")
    given = random_offer(rng)
    told = report_of(load(offered(given)), with_bands=False).offer
    for option, entered in zip(told.options, given["options"], strict=True):
        bill = option.bill
        known = {*numbers(bill.parts), *numbers(bill.labour), *numbers(bill.net), *numbers(bill.tax), *numbers(bill.total)}
        assert set(numbers(bill.words)) <= known | set(numbers(str(given.get("tax", "")))) | set(numbers(entered["hours"]))
        assert bill.total in bill.words


def test_the_second_demo_finds_by_itself_that_both_give_one_curve_and_what_the_money_buys():
    told = report_of(load(jobs()["trail"]))
    (pair,) = told.options.between
    assert pair.same
    assert pair.words[0] == "Options 1 and 2 give the same force curve, front and rear: nowhere apart."
    cheap, dear = (float(option.bill.total.split()[0]) for option in told.offer.options)
    assert pair.words[1] == f"Option 2 costs {dear - cheap:.2f} EUR more."
    assert pair.lead == "What the money buys then:"
    labels = [row.label for row in pair.differs]
    assert labels == ["Adjusters", "Valving", "Service per 50 h", "“No click makes a difference”"]
    assert told.offer.invented


def test_options_that_ride_unlike_do_not_claim_one_curve():
    (pair,) = report(offer_of(front("5", "103"), front("5", "123"))).options.between
    assert not pair.same
    assert "same force curve" not in " ".join(pair.words)
    assert "less" in pair.words[0]  # more gap, less force at full travel
    assert pair.words[1] == "Both cost 10.00 EUR."


def test_an_option_is_called_by_its_number_and_its_name_where_it_has_one():
    told = report(offer_of(front("5", "103") | {"name": "Springs only"}, front("5", "103"))).offer
    assert [option.title for option in told.options] == ["Option 1: Springs only", "Option 2"]


@pytest.mark.parametrize(
    ("hours", "price", "words"),
    [
        ("30", "165", "every 30 h, 165.00 EUR each: 275.00 EUR per 50 h"),
        ("60 h", None, "every 60 h"),
        (None, "90", "90.00 EUR each"),
        (None, None, ""),
    ],
)
def test_a_service_is_told_as_far_as_it_is_known(hours, price, words):
    """165 every 30 h are 165 x 50 / 30 = 275 every 50."""
    known = {key: value for key, value in (("service_hours", hours), ("service_price", price)) if value}
    assert report_of(load(offered(offer_of(front("5", "103") | known))), with_bands=False).offer.options[0].service == words


def test_a_change_says_against_what():
    """Each row of its own: the figure is the one option's less that of what its case names."""
    told = report(offer_of(front("5", "103"), front("7", "108"), front("2", "112"))).options
    own = {"as found": told.found[0].figures} | {f"option {one.number}": one.ends[0].figures for one in told.options}
    changes = [(f"option {one.number}", one.ends[0].change) for one in told.options]
    changes += [(f"option {pair.other}", pair.ends[0].change) for pair in told.between]
    assert len(changes) == 5
    for now, change in changes:
        was = change.end_force.case.removeprefix("against ").split(",")[0]
        assert change.end_force.value == pytest.approx(own[now].end_force.value - own[was].end_force.value, abs=1e-9)


def test_where_nothing_tells_them_apart_that_is_said():
    (pair,) = report(offer_of(front("5", "103"), front("5", "103"))).options.between
    assert (pair.lead, pair.differs) == ("Nothing else that is entered tells them apart.", ())


def test_no_option_is_praised():
    told = to_json(report_of(load(jobs()["trail"])).options) + to_json(report_of(load(jobs()["trail"])).offer)
    assert not re.search(r"\b(best|better|worse|value for|recommended|score|rank|cheaper|winner)\b", told, re.I)


def test_the_figures_come_with_the_bands_only_and_the_money_at_once():
    job = load(jobs()["trail"])
    first = part_of(job, "front", with_bands=False)
    assert first.options is None
    assert first.offer.options[0].bill is not None
    assert report_of(load(jobs()["enduro"])).offer is None


def test_an_end_that_is_refused_leaves_the_other_and_the_money():
    document = changed(jobs()["trail"], {"front.travel": "290 kg"})
    told = report_of(load(document))
    assert "refused" in told.options.problem
    assert {end.axle for option in told.options.options for end in option.ends} == {"rear"}
    assert told.offer.options[0].bill is not None
    both = changed(document, {"rear.travel": "300 kg"})
    assert options_report(load(both), load(both)).options == ()


def test_the_text_says_all_of_it():
    told = report_of(load(jobs()["trail"]))
    text = " ".join(offer_text(told).split())
    for option in told.offer.options:
        for words in (option.title, option.bill.words, option.complaints, option.valving, option.service, option.unknown):
            assert words in text
    for option in told.options.options:
        assert all(end.words in text for end in option.ends)
    assert all(words in text for pair in told.options.between for words in pair.words)
    assert told.offer.invented in text
    assert offer_text(report_of(load(jobs()["enduro"]), with_bands=False)) == NONE
