"""The offer in a job file: what is refused is named with its place, the rest stands, and nothing is lost."""

from __future__ import annotations

import copy
import json
from random import Random

import pytest

from calc.demo import jobs
from calc.job import JobError, load
from calc.job.text import read_jobs
from calc.job.visit import next_visit
from calc.report import report_of
from tests.support.offers import front, offer_of, offered, random_offer
from tests.support.spoilt_jobs import OTHER_TYPES


def problems(offer):
    return {one.path: one for one in load(offered(offer)).problems}


def test_a_refused_entry_names_its_option_and_part():
    option = {
        "parts": [{"what": "a", "count": "1", "price": "3"}, {"what": "b", "count": "0", "price": "12,5 USD"}],
        "hours": "4 weeks",
    }
    found = problems(offer_of({}, option))
    assert (
        found["offer.options[2].parts[2].price"].message
        == "Option 2, part 2, price: 'USD' does not fit here: this offer is in EUR."
    )
    assert found["offer.options[2].parts[2].price"].limit == "From 0 to 1000000 EUR."
    assert "below the limit of 0.001" in found["offer.options[2].parts[2].count"].message
    assert found["offer.options[2].hours"].limit == "From 0 to 500 h."


def test_what_can_be_read_two_ways_is_offered_both_ways():
    option = {"parts": [{"what": "a", "count": "1", "price": "1.250"}]}
    assert problems(offer_of(option))["offer.options[1].parts[1].price"].readings == ("1250", "1.25")
    assert problems(offer_of(option, hourly="1,250"))["offer.hourly"].readings == ("1250", "1.25")


def test_a_currency_that_is_none_is_quoted_by_its_first_twenty_letters():
    message = problems(offer_of(front("5", "103"), currency="ducats of the old town hall"))["offer.currency"].message
    assert message == "Currency: 'ducats of the old to' is no currency as it stands on a bill."


@pytest.mark.parametrize(
    ("tax", "said"),
    [("0 %", None), ("50 %", None), ("-0.5 %", "below the limit of 0"), ("50.5 %", "above the limit of 50")],
)
def test_a_tax_is_from_nothing_to_a_half(tax, said):
    found = problems(offer_of(front("5", "103"), tax=tax))
    assert ("offer.tax" in found) == (said is not None)
    if said:
        assert said in found["offer.tax"].message
        assert found["offer.tax"].limit == "From 0 to 50 %."


@pytest.mark.parametrize(
    ("head", "path"),
    [
        ({"tax": "60 %"}, "offer.tax"),
        ({"hourly": "-5"}, "offer.hourly"),
        ({"currency": "EUR2"}, "offer.currency"),
        ({"tax": "a"}, "offer.tax"),
    ],
)
def test_a_refused_head_stops_every_total(head, path):
    offer = offer_of(front("5", "103"), **head)
    assert path in problems(offer)
    told = report_of(load(offered(offer)), with_bands=False).offer
    assert told.options[0].bill is None
    assert any("refused" in words for words in told.options[0].waits)


@pytest.mark.parametrize(
    ("head", "option", "words"),
    [
        ({"currency": ""}, front("5", "103"), "The currency is not entered."),
        ({"tax_in_prices": None}, front("5", "103"), "Say whether the prices include the tax."),
        ({"hourly": ""}, {"hours": "2"}, "The price of an hour is not entered."),
        ({}, {"parts": [{"what": "a", "count": "1"}]}, "Part 1 has no price."),
        ({}, {"parts": [{"what": "a", "price": "1"}]}, "Part 1 has no count."),
        ({}, {}, "No parts and no hours are entered."),
    ],
)
def test_a_total_waits_for_what_is_missing_and_nothing_is_guessed(head, option, words):
    offer = offer_of(option, **head)
    assert problems(offer) == {}
    told = report_of(load(offered(offer)), with_bands=False).offer.options[0]
    assert told.bill is None
    assert words in told.waits


def test_a_setup_is_read_as_what_is_built_is():
    found = problems(offer_of(front("5 kg", "103", "4,4 N/mm")))
    one = found["offer.options[1].setup.front.preload"]
    assert "Option 1: Preload built: kg does not fit here" in one.message
    assert load(offered(offer_of(front("5", "103", "0,45 kg/mm")))).offer.options[0].setup["front"][
        "rate"
    ].reading.value == pytest.approx(4.413, abs=1e-3)


def test_answers_to_no_complaint_are_named():
    found = problems(offer_of({"answers": [1, 3]}, complaints=["Harsh"]))
    assert found["offer.options[1].answers[2]"].message == "Option 1: answers complaint 3, and 1 is listed."
    assert [*found] == ["offer.options[1].answers[2]"], "the first complaint is one that can be answered, and so is the last"
    both = load(offered(offer_of({"answers": [2, 1, 2]}, complaints=["Harsh", "Dives"])))
    assert (both.problems, both.offer.options[0].answers) == ((), (1, 2))


@pytest.mark.parametrize(
    ("offer", "words"),
    [
        ([], "offer must be an object of currency, tax, tax_in_prices, hourly, note, complaints, options."),
        ({"options": [{}] * 13}, "offer.options holds 13; there can be at most 12."),
        ({"options": [{"parts": [{}] * 31}]}, "offer.options[1].parts holds 31; there can be at most 30."),
        ({"options": {}}, "offer.options must be a list."),
        ({"hourl": "3"}, "offer.hourl is not a key of a job. Did you mean offer.hourly?"),
        ({"hourly": True}, "offer.hourly must be a string or a number."),
        ({"tax_in_prices": 1}, "offer.tax_in_prices must be true or false."),
        ({"options": [{"name": "x" * 301}]}, "offer.options[1].name must be text of at most 300 characters."),
        ({"options": [{"setup": {"rear": {"gap_left": "3"}}}]}, "offer.options[1].setup.rear.gap_left is not a key of a job."),
        ({"options": [{"answers": ["1"]}]}, "offer.options[1].answers[1] must be the number of a complaint, from 1."),
        ({"complaints": [4]}, "offer.complaints[1] must be text of at most 300 characters."),
        ({"currency": "\ud800"}, "offer.currency contains half of a character"),
    ],
)
def test_an_offer_of_another_shape_is_no_job(offer, words):
    with pytest.raises(JobError, match="offer") as caught:
        load(offered(offer))
    assert str(caught.value).startswith(words)


def _places(part, path=()):
    """Every place in a document where something can be put."""
    items = part.items() if isinstance(part, dict) else enumerate(part) if isinstance(part, list) else ()
    for key, value in items:
        yield (*path, key)
        yield from _places(value, (*path, key))


@pytest.mark.parametrize("seed", range(60))
def test_a_spoilt_offer_is_named_or_reported_and_the_bike_stands(seed):
    rng = Random(f"spoilt offer {seed}")
    document = jobs()["trail"] if rng.random() < 0.5 else offered(random_offer(rng))
    before = report_of(load(jobs()["trail"]), with_bands=False).ends
    for _ in range(rng.choice((1, 1, 2, 5))):
        *way, last = rng.choice([*_places(document["offer"])])
        holder = document["offer"]
        for key in way:
            holder = holder[key] if isinstance(holder, (dict, list)) and (key in holder or isinstance(key, int)) else {}
        if isinstance(holder, dict) or (isinstance(holder, list) and last < len(holder)):
            holder[last] = rng.choice((*OTHER_TYPES, "12 furlongs", "1,250", "-4", "9**9**9", "1e400", 1e300, 10**30))
    kept = copy.deepcopy(document)
    try:
        job = load(document)
    except JobError as error:
        assert str(error).startswith("offer")
    else:
        assert all(one.path.startswith("offer.") for one in job.problems)
        report = report_of(job, with_bands=False)
        assert report.ends == before
        assert len(report.offer.options) == len(document["offer"].get("options", []))
    assert document == kept


def test_files_keep_the_offer_and_the_next_visit_drops_it():
    document = jobs()["trail"]
    (read,), _ = read_jobs(json.dumps(document))
    assert read["offer"] == document["offer"]
    assert "offer" not in next_visit(document, "2026-09-01")
    assert "offer" in document
