"""An unequal pair is told left and right wherever a spring is named: nobody sells the mean of two springs."""

import re

import pytest

from calc.job import load
from calc.report.names import spring_names
from calc.report.words import best_words, count_words, open_words, sag_choice_words, span_words
from calc.sizing.choice import size_end
from tests.support.documents import demo
from tests.support.plain import report, text

SOLD = {"standard.fork_springs": "changed", "standard.fork_rate": "4.2"}
JOBS = {
    "a shelf": {"front.buy": "stock-pairs", "front.stock": "4.2 4.8", "front.target_sag": "70 mm"},
    "a series": {"front.buy": "series-pairs", "front.target_sag": "63 mm"},
    "a pair is in": SOLD
    | {"front.spring_kind": "unequal", "front.rate": "4.4", "front.rate_right": "4.6", "front.buy": "series-pairs"},
    "a pair is in, far too soft": SOLD | {"front.spring_kind": "unequal", "front.rate": "3.4", "front.rate_right": "3.8"},
    "no pair can be built": {
        "front.buy": "stock-pairs",
        "front.stock": "4.4 4.8",
        "front.free_length": "470",
        "front.solid_length": "400",
    },
}
PAIR = re.compile(r"(\d+\.\d+) left and (\d+\.\d+) right")


@pytest.fixture(scope="module", params=list(JOBS))
def front(request):
    return report(demo(JOBS[request.param]))["ends"]["front"]


def sentences(end):
    """Every sentence that may name a spring."""
    told = [end.get("answer", ""), *end.get("why", ()), *(problem["message"] for problem in end["problems"])]
    told += [end[part]["words"] for part in ("sure", "holds_for") if end[part]]
    return told + [one["text"] for one in (end["sure"] or {"counts": []})["counts"]]


def test_no_sentence_names_a_mean_without_both_rates(front):
    """Each mean of a pair that is shown, looked for in every sentence: only in brackets behind the two."""
    setups = [*front["candidates"], *([front["as_found"]["setup"]] if front["as_found"]["setup"] else [])]
    means = {one["rate"]["text"] for one in setups if one["pair"]} - {one["rate"]["text"] for one in setups if not one["pair"]}
    assert means
    for words in sentences(front):
        bare = re.sub(r" right \(mean [^)]*\)", " right", words)
        named = set(re.findall(r"(?<![\d.])\d+\.\d+(?![\d.]| Hz| ×)", re.sub(PAIR, "", bare)))
        assert not named & means, words


def test_each_pair_told_is_one_that_is_on_offer(front):
    offered = {(one["pair"]["left"]["text"], one["pair"]["right"]["text"]) for one in front["candidates"] if one["pair"]}
    counted = {
        match.groups() for one in (front["sure"] or {"counts": []})["counts"] for match in [PAIR.search(one["text"])] if match
    }
    found = front["as_found"]["setup"]
    if found and found["pair"]:
        offered.add((found["pair"]["left"]["text"], found["pair"]["right"]["text"]))
    for words in sentences(front):
        assert {match.groups() for match in PAIR.finditer(words)} <= offered | counted, words


def test_a_pair_stands_in_the_answer_the_count_and_the_rider_span():
    shelf, own = (report(demo(JOBS[name]))["ends"]["front"] for name in ("a shelf", "a pair is in"))
    assert shelf["answer"].startswith("Fit 4.2 left and 4.8 right (mean 4.5) N/mm, ")
    assert "4.2 left and 4.8 right in " in shelf["sure"]["words"]
    assert own["answer"].startswith("Keep the 4.4 left and 4.6 right (mean 4.5) N/mm: ")
    assert own["why"][1].startswith("The pair of 4.4 left and 4.6 right rides at ")
    assert own["holds_for"]["words"].startswith("The pair of 4.4 left and 4.6 right is right for riders of ")
    assert "4.5 is 4.4 left and 4.6 right (mean 4.5)" in text(demo(JOBS["a pair is in"]))


def test_every_sentence_takes_the_name_of_a_pair():
    job = load(demo({"front.buy": "series-pairs"}))
    name = spring_names(job, "front", size_end(job, "front"))
    assert [name(rate) for rate in (4.2, 4.3, 4.4, 4.6999999999)] == [
        "4.2",
        "4.2 left and 4.4 right",
        "4.4",
        "4.6 left and 4.8 right",
    ]
    assert count_words({4.3: 6, 4.4: 4}, 4.3, 10, name) == "4.2 left and 4.4 right in 6 of 10 runs with your ± varied, 4.4 in 4."
    assert open_words(4.3, 4.4, False, name).startswith("From 4.2 left and 4.4 right to 4.4 N/mm in 8 of 10 runs")
    assert best_words(4.3, 4.2, 0.2, name) == "Nearest to the standard would be 4.2 left and 4.4 right, one step."
    assert (
        sag_choice_words(4.3, 4.2, 4.2, 5.0, name)
        == "With 5 mm less rider sag it would be 4.2 left and 4.4 right, with 5 mm more 4.2."
    )
    assert span_words(None, 90.0, "the pair of 4.2 left and 4.4 right").startswith(
        "The pair of 4.2 left and 4.4 right is right for riders"
    )
