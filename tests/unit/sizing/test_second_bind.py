"""Coil bind of the second spring: nested against the margin, stacked where it would close too early."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.optimize import brentq

from calc.springs.arrangement import Nested, Progressive, SingleSpring, Stacked
from calc.springs.table import ForceTable
from tests.support.documents import demo
from tests.support.plain import report

NESTED = {
    "front.spring_kind": "nested", "front.second_rate": "1 N/mm", "front.second_later": "200 mm", "front.rate": "4 N/mm",
    "standard.fork_rate": "4 N/mm",
}  # fmt: skip
STACKED = {
    "front.spring_kind": "stacked", "front.second_rate": "8 N/mm", "front.second_room": "30 mm", "front.rate": "6 N/mm",
    "standard.fork_rate": "6 N/mm",
}  # fmt: skip


@given(main=st.floats(2, 12), second=st.floats(2, 12), room=st.floats(5, 60), whole=st.floats(1, 200))
def test_a_stacked_second_spring_is_shortened_as_equilibrium_says(main, second, room, whole):
    """Second method: the length x of the second spring at which both carry the same force, or its stop."""
    by_balance = room if second * room < main * (whole - room) else brentq(lambda x: second * x - main * (whole - x), 0.0, whole)
    assert float(Stacked(second, room).second_shortened(main, whole)) == pytest.approx(min(by_balance, room), rel=1e-9)
    parts = Stacked(second, room).second_shortened(main, whole) + Stacked(second, room).main_shortened(main, whole)
    assert float(parts) == pytest.approx(whole, rel=1e-9), "both parts are the whole"


def test_a_nested_second_spring_is_shortened_from_where_it_joins():
    assert Nested(2.0, 50.0).second_shortened(4.0, np.array([20.0, 50.0, 80.0])).tolist() == [0.0, 0.0, 30.0]
    table = Progressive(ForceTable(((0.0, 0.0), (50.0, 210.0), (100.0, 440.0))))
    assert SingleSpring().second_shortened(4.0, 30.0) is None
    assert table.second_shortened(4.0, 30.0) is None


def front_of(changes):
    return report(demo(changes), with_bands=False)["ends"]["front"]


def vetoes(front):
    return {c["rate"]["value"]: {v["code"]: v["words"] for v in c["vetoes"]} for c in front["candidates"]}


@pytest.mark.parametrize(("room", "barred"), [(100, True), (140, False)])
def test_nested_within_the_margin_is_barred_in_words_with_its_numbers(room, barred):
    front = front_of(NESTED | {"front.second_free": f"{room + 60} mm", "front.second_solid": "60 mm"})
    chosen = next(c for c in front["candidates"] if c["fitted"])
    left = room - (chosen["preload"]["value"] + 300 - 200)
    assert chosen["second_bind_clearance"]["value"] == pytest.approx(left)
    words = vetoes(front)[chosen["rate"]["value"]].get("second coil bind")
    assert (words is not None) == barred
    if barred:
        assert f"leaves {left:.0f} mm before the second spring's coils touch".replace("-", "−") in words


def test_stacked_closes_by_design_and_bars_only_where_its_coils_touch_before_it_is_said_to_close():
    exact, early = (front_of(STACKED | {"front.second_free": f"{free} mm", "front.second_solid": "40 mm"}) for free in (70, 65))
    assert all("second closes early" not in found for found in vetoes(exact).values())
    assert all(c["second_bind_clearance"]["value"] == pytest.approx(0.0) for c in exact["candidates"])
    assert all(
        "closes the second spring's coils 5 mm too early" in found["second closes early"] for found in vetoes(early).values()
    )
    assert early["state"] == "none"
    assert "Check where the second spring closes" in early["problems"][0]["way_out"]


def test_what_is_not_measured_is_not_checked():
    front = front_of(NESTED | {"front.second_free": "110 mm"})
    assert all("second coil bind" not in found for found in vetoes(front).values())
    assert all(c["second_bind_clearance"] is None for c in front["candidates"])


def test_lengths_that_contradict_each_other_are_refused_at_the_field():
    front = front_of(NESTED | {"front.second_free": "60 mm", "front.second_solid": "60 mm"})
    assert front["state"] == "refused"
    assert front["problems"][0]["path"] == "front.second_solid"
