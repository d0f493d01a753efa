"""No spring is ordered while a sag fits nothing, weights contradict each other, or nobody weighed the rider.

Common practice, no source.
"""

import pytest

from calc.job import load
from calc.report import part_of, report_of
from calc.report.letter import letter
from calc.report.text import report_text
from tests.support.documents import demo

# The first demo sizes other springs at both ends; by its readings it would sag 69 mm in front and 100 behind, as it came in.
DEEP = {
    "front": {"front.aboard_sag": "92", "front.aboard_again_sag": "88"},
    "rear": {"rear.aboard_sag": "131", "rear.aboard_again_sag": "127"},
}


@pytest.mark.parametrize("axle", ["front", "rear"])
def test_other_springs_wait_for_a_sag_that_fits_nothing(axle):
    told = report_of(load(demo(DEEP[axle])))
    end, other = (getattr(told.ends, one) for one in (axle, "rear" if axle == "front" else "front"))
    assert [row.believed for row in next(one for one in told.sags.ends if one.axle == axle).rows] == [False]
    assert end.verdict == "fit"
    assert "the rider sag that was read fits nothing else" in end.doubt
    assert end.answer.endswith(end.doubt)
    assert not other.doubt
    for text in (letter(told), report_text(told)):
        assert " ".join(text.split()).count(f"Don't order {'springs' if axle == 'front' else 'a spring'}") == 1
    assert f"Built so, the {axle} sags" not in " ".join(letter(told).split())
    said = " ".join(told.message)
    assert f"Which {'fork springs suit' if axle == 'front' else 'rear spring suits'} you cannot be said yet" in said


def test_one_end_asked_alone_says_so_too():
    assert part_of(load(demo(DEEP["rear"])), "rear").end.doubt


def test_sags_that_fit_hold_nothing_up():
    fitting = {"front.aboard_sag": "72", "front.aboard_again_sag": "66"}
    assert not report_of(load(demo(fitting))).ends.front.doubt


def test_what_is_in_may_stay_whatever_was_read():
    told = report_of(
        load(demo(DEEP["front"] | {"front.rate": "4.6", "standard.fork_springs": "changed", "standard.fork_rate": "4.2"}))
    )
    assert [row.believed for row in told.sags.ends[0].rows] == [False]
    assert told.ends.front.chosen.fitted
    assert not told.ends.front.doubt


def without_the_rider():
    """The first demo, of whose rider nothing is known."""
    job = demo()
    job["rider"] = {key: entry for key, entry in job["rider"].items() if key not in ("mass", "front_axle", "rear_axle")}
    return job


@pytest.mark.parametrize(
    ("kilograms", "in_doubt"), [("113.8", False), ("118", False), ("121", True), ("106", True)]
)  # the axles carry 113.8 kg; a twentieth of 118 is 5.9, of 121 6.05, of 106 5.3
def test_weights_that_contradict_by_a_spring_hold_an_order_up(kilograms, in_doubt):
    told = report_of(load(demo({"bike.mass": f"{kilograms} kg"})), with_bands=False)
    for end in (told.ends.front, told.ends.rear):
        assert ("weights that were entered contradict each other" in end.doubt) is in_doubt
        assert end.answer.endswith(end.doubt)


def test_what_the_axles_carry_with_the_rider_counts_too():
    assert "contradict" in report_of(load(demo({"rider.mass": "90 kg"})), with_bands=False).ends.rear.doubt


def test_nobody_weighed_the_rider():
    told = report_of(load(without_the_rider()))
    for end in (told.ends.front, told.ends.rear):
        assert end.doubt == "This is for a rider of 86 kg in kit, the usual one for such a bike: weigh yours first."
        assert end.answer.endswith(end.doubt)
    said = " ".join(letter(told).split())
    assert "Next Weigh the rider in full kit. Why" in said
    assert "Built so" not in said


@pytest.mark.parametrize("known", [("mass",), ("front_axle", "rear_axle")])
def test_a_rider_on_a_scale_or_on_the_axles_is_known(known):
    job, whole = without_the_rider(), demo()
    job["rider"] |= {key: whole["rider"][key] for key in known}
    told = report_of(load(job), with_bands=False)
    assert not told.ends.front.doubt
    assert "rider.mass" not in [one.path for one in told.measure_first]
