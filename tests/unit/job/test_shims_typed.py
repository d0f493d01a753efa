"""Groups of equal shims as people type them."""

import pytest

from calc.job import load
from calc.job.visit import next_visit
from tests.support.documents import demo


@pytest.mark.parametrize(
    ("text", "groups"),
    [
        ("3 24 0.15", ((3.0, 24.0, 0.15),)),
        ("3 24 0,15; 2 20 0,1", ((3.0, 24.0, 0.15), (2.0, 20.0, 0.1))),
        ("2 20 mm 0.1 mm\n3 24 0.15", ((2.0, 20.0, 0.1), (3.0, 24.0, 0.15))),
        ("1 2.4 cm 0.2", ((1.0, 24.0, 0.2),)),
        ("60 24 0.15", ((60.0, 24.0, 0.15),)),
    ],
)
def test_groups_in_any_order_and_with_units(text, groups):
    read = load(demo({"front.shims": text})).fields["front.shims"].groups
    assert [pytest.approx(group) for group in groups] == list(read)


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("3 24", "group 1, '3 24', is not three numbers"),
        ("3 24 0.15; 2 x 0.1", "group 2, '2 x 0.1', is not three numbers"),
        ("2.5 24 0.15", "group 1, '2.5': how many must be a whole number"),
        ("0 24 0.15", "group 1, '0': 0 is below the limit of 1"),
        ("61 24 0.15", "group 1, '61': 61 is above the limit of 60"),
        ("3 24 15", "15 mm is above the limit of 2 mm"),
        ("3 240 0.15", "240 mm is above the limit of 70 mm"),
        ("3 24 1e999", "group 1, '1e999'"),
        (";", "enter 1 to 40 groups"),
        ("; ".join(["1 20 0.1"] * 41), "enter 1 to 40 groups"),
    ],
)
def test_what_is_wrong_is_named_and_stops_no_answer(text, said):
    job = load(demo({"front.shims": text}))
    problem = job.fields["front.shims"].problem
    assert said in problem.message
    assert problem.message.startswith("Shims as found: ")
    assert problem.end == "neither"


def test_what_was_built_is_found_at_the_next_visit():
    document = demo({"front.shims": "3 24 0.15", "front.set_shims": "4 24 0.15", "front.click_rebound_left": "12", "front.set_rebound_left": "10",
                     "front.click_compression_left": "9", "rear.set_high": "1.5"})  # fmt: skip
    after = load(next_visit(document, "2026-09-01"))
    assert after.fields["front.shims"].groups == ((4.0, 24.0, 0.15),)
    assert (
        after.number("front.click_rebound_left"),
        after.number("front.click_compression_left"),
        after.number("rear.click_high"),
    ) == (10.0, 9.0, 1.5)
    assert not any(after.entered(path) for path in after.fields if ".set_" in path)


@pytest.mark.timeout(20)
def test_a_long_text_that_is_no_list_is_refused_at_once():
    """A pattern that tried every way to cut it took half a minute over a few hundred letters."""
    text = ",".join(["1.5 1.5 1.5"] * 40) + ",x"
    job = load(demo({"front.shims": text, "front.stock": text, "front.buy": "stock"}))
    assert job.fields["front.shims"].problem
    assert job.fields["front.stock"].problem
