"""What is told, once more in the unit that was typed. Conversions: NIST SP 811 (2008), appendix B.8, from memory."""

import pytest

from calc.job import load
from calc.report import report_of
from calc.report.letter import letter
from calc.report.text import report_text
from tests.support.documents import demo

LBF_IN = 0.1751268  # N/mm in 1 lbf/in
KGF_MM = 9.80665  # N/mm in 1 kgf/mm
PSI = 0.06894757  # bar in 1 psi
AIR = {"front.air": "air leg"}


@pytest.mark.parametrize(
    ("axle", "changes", "unit", "one"),
    [
        ("front", {"front.rate": "0.428 kg/mm"}, "kg/mm", KGF_MM),
        ("rear", {"rear.rate": "274 lb/in"}, "lb/in", LBF_IN),
        ("rear", {"rear.buy": "stock", "rear.stock": "280 lb/in; 300 lb/in; 320 lb/in"}, "lb/in", LBF_IN),
        ("front", AIR | {"front.air_pressure": "140 psi"}, "psi", PSI),
    ],
)
def test_it_is_told_in_the_unit_that_was_typed_too(axle, changes, unit, one):
    told = report_of(load(demo(changes)), with_bands=False)
    end = getattr(told.ends, axle)
    figure = end.chosen.pressure or end.chosen.rate
    first, second = end.also.removesuffix(".").split(" is ")
    assert first == f"{figure.text} {figure.unit}"
    assert second.split()[1] == unit
    assert float(second.split()[0]) * one == pytest.approx(figure.value, rel=5e-3)  # three figures
    for text in (letter(told), report_text(told)):
        assert end.also in " ".join(text.split())


@pytest.mark.parametrize(
    "changes",
    [{}, {"front.rate": "4.2 N/mm"}, AIR, AIR | {"front.air_pressure": "10 bar"}, {"front.buy": "stock", "front.stock": "4.4; 4.6; 4.8"}],
)  # fmt: skip
def test_nothing_is_said_twice(changes):
    assert not report_of(load(demo(changes)), with_bands=False).ends.front.also
