"""Any job with any kind of spring is answered in finite numbers and words, and words and numbers agree."""

import json

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.boundary import answer
from calc.job.field import Kind
from calc.job.fields import FIELDS
from tests.support.documents import demo
from tests.support.plain import report
from tests.support.verdicts import finite
from tests.whole.test_any_job import dropped

OF_SPRINGS = (
    "rate",
    "preload",
    "spring",
    "second",
    "table",
    "topout",
    "rubber",
    "buy",
    "new_",
    "free_length",
    "solid",
    "pitch",
    "space",
    "installed",
    "thread",
)
NUMBERS = [
    p
    for p, f in FIELDS.items()
    if f.kind is Kind.QUANTITY and p.split(".")[0] != "standard" and p.split(".")[1].startswith(OF_SPRINGS)
]
CHOICES = [p for p, f in FIELDS.items() if f.kind is Kind.CHOICE and p.split(".")[1].startswith(OF_SPRINGS)]
SOUND = {
    "front.rate_right": "4.6", "front.second_rate": "12", "front.second_room": "15", "front.second_later": "120",
    "front.wire": "4.75", "front.coil_diameter": "36", "front.coils": "40", "front.topout_rate": "15", "front.rubber_length": "30",
    "front.rubber_rate": "40", "front.free_length": "470", "front.spacers": "30", "front.space": "494", "front.stock": "3.8 4.2 4.6 5 5.4",
    "rear.second_rate": "250", "rear.second_room": "4", "rear.second_later": "60", "rear.wire": "11.5", "rear.coil_diameter": "72",
    "rear.coils": "8", "rear.topout_rate": "300", "rear.rubber_length": "15", "rear.rubber_rate": "90", "rear.free_length": "250",
    "rear.installed_length": "236", "rear.stock": "44 48 52 56 60 64 68 72", "rear.spring_core": "40",
}  # fmt: skip


def table(rate: float, bend: float, far: int) -> str:
    """A spring that rises: rate x + bend x^2, in ten pairs."""
    return "; ".join(f"{x * far / 10:.1f} {rate * x * far / 10 + bend * (x * far / 10) ** 2:.1f}" for x in range(11))


@st.composite
def jobs(draw) -> dict:
    """Choices of springs all drawn, sound numbers for each of them, a few of them anywhere in the lower part of their limits."""
    drawn = SOUND | {path: draw(st.sampled_from(list(FIELDS[path].choices))) for path in CHOICES}
    drawn["front.table"] = table(draw(st.floats(3.4, 4.2)), draw(st.floats(0, 0.005)), draw(st.sampled_from([340, 340, 200])))
    drawn["rear.table"] = table(draw(st.floats(42, 55)), draw(st.floats(0, 0.1)), draw(st.sampled_from([200, 200, 100])))
    drawn |= {f"{end}.rubber_table": table(20.0, draw(st.floats(0, 2)), 60) for end in ("front", "rear")}
    for path in draw(st.lists(st.sampled_from(NUMBERS), max_size=3, unique=True)):
        field = FIELDS[path]
        drawn[path] = f"{field.low + draw(st.sampled_from([0.0, 0.02, 0.1, 0.3, 1.0])) * (field.high - field.low):.3f}"
    return drawn


@given(jobs())
@settings(max_examples=100)
def test_any_springs_are_answered(drawn):
    answered = report(demo(dropped(drawn)), with_bands=False)
    assert finite(answered)
    for name, end in answered["ends"].items():
        assert end["state"] in {"ok", "none", "refused"}
        for problem in end["problems"]:
            assert problem["message"].strip()
            assert "nan" not in problem["message"]
        if end["state"] == "ok":
            chosen = end["chosen"]
            assert chosen["vetoes"] == []
            pair = chosen["pair"]
            assert (pair is None) != ("left and" in end["answer"].split(",")[0])
            if pair:
                assert pair["left"]["value"] + pair["right"]["value"] == pytest.approx(2 * chosen["rate"]["value"])
            assert end["seat"]["words"].endswith(".")
            assert (chosen["landing_energy_rubber"] is not None) == (drawn[f"{name}.rubber"] != "none")


@given(jobs())
@settings(max_examples=12)
def test_any_springs_come_back_through_the_door_with_bands(drawn):
    reply = json.loads(answer(json.dumps({"kind": "size", "job": demo(dropped(drawn))})))
    assert reply["kind"] == "report", reply
