"""What is known of a leg's oil: poured in, filled to the brim, by volume, read extended; each the same leg told another way."""

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.gas.chamber import gas_above_oil
from calc.impossible import Impossible
from calc.job import load
from calc.model import conditions, fork, found_gaps
from tests.support.documents import demo
from tests.support.plain import report
from tests.unit.end.test_end import open_leg


def job_of(changes):
    job = load(demo(changes))
    assert not job.problems, job.problems
    return job


def gas_of(changes, gap):
    job = job_of(changes)
    return fork(job, conditions(job)).gas.chamber(4.2, gap)


def front_of(changes):
    return report(demo(changes), with_bands=False)["ends"]["front"]


@given(gap=st.floats(60, 200))
def test_filled_to_the_brim_is_the_area_by_another_reading(gap):
    """What fills the demo's leg from 140 mm, by its two areas, leaves the same leg at any gap."""
    pieces = fork(job_of({}), conditions(job_of({}))).gas.pieces
    poured = float(gas_above_oil(140.0, pieces)) / 1000
    brimmed = gas_of({"front.area_by": "brim", "front.brim_gap": "140 mm", "front.brim_poured": f"{poured:.9f} ml"}, gap)
    assert float(brimmed.volume0) == pytest.approx(float(gas_of({}, gap).volume0), rel=1e-9)


def test_filled_to_the_brim_in_a_conventional_leg_is_volume_over_gap():
    leg = fork_pieces(
        {"front.layout": "conventional", "front.area_by": "brim", "front.brim_gap": "140 mm", "front.brim_poured": "210 ml"}
    )
    assert leg == ((0.0, 1500.0),)


def fork_pieces(changes):
    job = job_of(changes)
    return fork(job, conditions(job)).gas.pieces


@given(gap=st.floats(60, 250), spring_in=st.booleans())
def test_the_gap_by_volume_is_the_gap_it_was_filled_to(gap, spring_in):
    """Brim less oil is what stands over the oil with nothing in it; told in the convention of the job."""
    above = float(gas_above_oil(gap, open_leg().pieces))
    leg = open_leg(spring_in=spring_in, spacer=14e3, spacer_length=40.0)
    told = float(leg.gap_of(above, 4.2))
    expected = gap if not spring_in else float(open_leg(spacer=14e3, spacer_length=40.0).other_gap(4.2, gap))
    assert told == pytest.approx(expected, abs=1e-6)


def test_ten_millilitres_more_oil_is_ten_less_gas():
    volume = {"front.gap_from": "volume filled", "front.brim_volume": "780 ml", "front.filled_kept": "0 ml"}
    gases = []
    for filled in ("520 ml", "530 ml"):
        job = job_of(volume | {"front.filled_left": filled})
        gases.append(float(fork(job, conditions(job)).gas.chamber(4.2, found_gaps(job, conditions(job))[0]).volume0))
    assert gases[0] - gases[1] == pytest.approx(10e3, abs=1e-2)


def test_what_stayed_in_counts_as_filled():
    volume = {"front.gap_from": "volume filled", "front.brim_volume": "780 ml"}
    wet = job_of(volume | {"front.filled_left": "500 ml", "front.filled_kept": "20 ml"})
    dry = job_of(volume | {"front.filled_left": "520 ml", "front.filled_kept": "0 ml"})
    assert float(found_gaps(wet, conditions(wet))[0]) == pytest.approx(float(found_gaps(dry, conditions(dry))[0]))


def test_by_volume_without_a_brim_only_changes_hold_and_it_is_said():
    answered = report(demo({"front.gap_from": "volume filled", "front.filled_left": "520 ml"}), with_bands=False)
    assert any("only changes hold" in note for note in answered["notes"])
    assert any("reliable only in a dry leg" in note for note in answered["notes"])
    assert not any("dry leg" in note for note in report(demo(), with_bands=False)["notes"])


def test_oil_to_add_goes_from_the_volume_filled():
    by_volume = {
        "front.gap_from": "volume filled",
        "front.brim_volume": "780 ml",
        "front.filled_kept": "0 ml",
        "front.filled_left": "520 ml",
    }
    front = front_of(by_volume)
    gap = front["chosen"]["gap"]["value"]
    above = float(gas_above_oil(gap, fork_pieces({}))) / 1000
    assert front["chosen"]["oil"]["left"]["value"] == pytest.approx(780 - 520 - above)


def test_read_extended_the_same_oil_is_the_same_leg():
    """Extended, the outer tube's bore reaches down by the stroke: the oil of a gap of 120 mm collapsed lies there by arithmetic."""
    pieces = fork_pieces({})
    above = float(gas_above_oil(120.0, pieces)) + 1809.5574 * 308.0  # what the seal area draws out joins the gas
    bore = pieces[0][1]
    depth, deep = 32.0 + 308.0, pieces[1][1]
    gap = above / bore if above < depth * bore else depth + (above - depth * bore) / deep
    extended = gas_of({"front.gap_state": "extended"}, gap)
    assert float(extended.volume0) == pytest.approx(float(gas_of({}, 120.0).volume0), rel=1e-6)


@pytest.mark.parametrize(
    ("changes", "path", "words"),
    [
        ({"front.area_by": "brim"}, "front.brim_gap", "is not entered"),
        (
            {"front.area_by": "brim", "front.brim_gap": "140 mm", "front.brim_poured": "50 ml"},
            "front.brim_poured",
            "50 ml from a gap of 140 mm leaves nothing",
        ),
        (
            {
                "front.gap_from": "volume filled",
                "front.brim_volume": "500 ml",
                "front.filled_left": "520 ml",
                "front.filled_kept": "0 ml",
            },
            "front.filled_left",
            "20 ml more than the collapsed leg holds",
        ),
    ],
)
def test_what_cannot_be_is_refused_in_words(changes, path, words):
    front = front_of(changes)
    problems = front["problems"] or [front["as_found"]["problem"]]
    assert problems[0]["path"] == path
    assert words in problems[0]["message"]


def test_a_leg_that_no_gap_unlocks_says_so():
    """Read with the spring in, where the spring leaves less room than it takes: a deeper gap holds no more gas."""
    leg = replace(open_leg(), pieces=((0.0, 90.0),), collapsed_stroke=250.0, stroke=300.0, spring_in=True, free_length=470.0)
    with pytest.raises(Impossible, match="oil-locked before full travel at any gap up to 500 mm") as caught:
        leg.lock_gap(4.2)
    assert caught.value.field == "front.seal_diameter"
