"""An option may leave a sealed cartridge in another state than it is in: against the leg written out by hand."""

from __future__ import annotations

from math import cos
from random import Random

import pytest

from calc.gas.chamber import circle
from calc.job import JobError, load
from calc.model import end_loads
from calc.report.options import options_report
from tests.support.documents import changed, demo
from tests.support.hand_push import GAS, OUTSIDE, PISTON, Leg, made_up, slow_force
from tests.support.offers import front, offer_of, offered

BUILT, OPENED = "as built", "opened into one"


def left_as(state: str, leg: Leg) -> dict:
    """An option that leaves the cartridge so, its springs as they are, oil by the gap of the shut one."""
    gap = f"{leg.gap:.6f} mm"
    setup = {"rate": f"{leg.main:.6f} N/mm", "preload": f"{leg.preload:.6f} mm", "gap_left": gap, "gap_right": gap}
    return {"setup": {"front": setup | ({"cartridge": state} if state else {})}}


def found(state: str, leg: Leg, document: dict) -> dict:
    """The fork found in a state; oil poured into an opened one spreads over the place of the cartridge too."""
    body = 30.0
    free = leg.free + (float(circle(body)) if state == OPENED else 0.0)
    raised = {"value": f"{20e3 / free:.6f} mm", "plus_minus_95": "0.3 mm"}
    return changed(document, {"front.cartridge_state": state, "front.cartridge_body": f"{body} mm", "front.raised_height": raised})


def figures(document: dict, *options: dict):
    job = load({**document, "offer": offer_of(*options)})
    ends = [option.ends[0] for option in options_report(job, job).options]
    assert all(end.axle == "front" for end in ends)
    return [end.figures for end in ends], job


@pytest.mark.parametrize("fill", [GAS, PISTON])
@pytest.mark.parametrize("seed", range(3))
def test_a_fork_found_open_and_shut_anew_sinks_by_the_sum_of_the_forces(fill, seed):
    """At the rider sag told two legs carry the load by Boyle's law and the piston's statics; behind the oil stands what they say."""
    leg, document = made_up(Random(f"shut anew {seed}"), fill, True, exact=True)
    (told,), job = figures(found(OPENED, leg, document), left_as(BUILT, leg))
    legs = 2.0 / cos(job.number("bike.rake"))
    sag = told.rider_sag.value
    assert legs * slow_force(leg, BUILT, sag, main_in=True) == pytest.approx(end_loads(job, "front").aboard, rel=1e-3)
    rod, head, whole = (float(circle(size)) for size in (leg.rod, leg.piston, leg.seal))
    if fill == GAS:
        behind = (OUTSIDE + leg.charge) * leg.gas / (leg.gas - rod * sag) - OUTSIDE
    else:
        room = leg.free * leg.gap + whole * leg.collapsed - leg.goes_in - leg.steel
        behind = leg.charge + leg.spring * rod * sag / head**2 + OUTSIDE * (room / (room - whole * sag) - 1.0)
    assert told.behind.value == pytest.approx(10.0 * behind, rel=2e-3)


@pytest.mark.parametrize("state", [BUILT, OPENED])
def test_the_state_that_it_is_in_is_the_one_it_is_left_in_unsaid(state):
    leg, document = made_up(Random("unsaid"), GAS, True, exact=True)
    (said, unsaid, other), _ = figures(found(state, leg, document), left_as(state, leg), left_as("", leg), left_as(BUILT, leg))
    assert said == unsaid
    assert (other == unsaid) == (state == BUILT)


def test_opened_by_an_option_is_as_opened_by_the_hand():
    """A fork found shut that an option opens does what the same fork found open does, at the same gap and with the same +/-."""
    leg, document = made_up(Random("by the hand"), GAS, True)
    (shut,), _ = figures(found(BUILT, leg, document), left_as(OPENED, leg))
    (open_,), _ = figures(found(OPENED, leg, document), left_as("", leg))
    for name in ("free_sag", "rider_sag", "end_force", "behind"):
        one, other = getattr(shut, name), getattr(open_, name)
        assert one.value == pytest.approx(other.value, rel=1e-7)
        assert one.plus_minus_95 == pytest.approx(other.plus_minus_95, rel=0.25), "other draws of the same readings"


def test_what_a_charge_does_stands_in_words_beside_the_curve():
    job = load(
        offered(offer_of(front("5", "103"), {"setup": {"front": front("5", "190")["setup"]["front"] | {"cartridge": BUILT}}}))
    )
    report = options_report(job, job)
    (pair,) = report.between
    behind = pair.ends[0].change.behind
    assert behind.value == pytest.approx(
        report.options[1].ends[0].figures.behind.value - report.options[0].ends[0].figures.behind.value, abs=0.01
    )
    assert f"option 2 against option 1: {behind.text} {behind.plus_minus_text} bar more." in pair.words[1]
    assert (
        pair.differs[0].label,
        pair.differs[0].one,
        pair.differs[0].other,
    ) == ("Cartridge", "as it came in", "shut and charged as built")
    assert "gap 190 mm around the shut cartridge" in report.options[1].ends[0].words


def test_of_a_fork_without_one_it_is_refused_by_name_and_the_others_stand():
    document = {**demo(), "offer": offer_of({"setup": {"front": {"cartridge": BUILT, "rate": "4.4"}}}, front("5", "120", "4.4"))}
    job = load(document)
    first, second = (option.ends[0] for option in options_report(job, job).options)
    assert "Cartridge condition does not apply here" in first.words
    assert second.figures.behind is None


def test_a_cartridge_alone_is_no_setup():
    job = load(offered(offer_of({"setup": {"front": {"cartridge": BUILT}}})))
    assert "Enter what the fork is set to then" in options_report(job, job).options[0].ends[0].words


@pytest.mark.parametrize("said", ["shut", "seal leaking", 1, True, ["as built"]])
def test_another_state_is_none_that_work_leaves(said):
    with pytest.raises(JobError, match=r"offer\.options\[1\]\.setup\.front\.cartridge must be one of: as built, opened into one"):
        load(offered(offer_of({"setup": {"front": {"cartridge": said}}})))
