"""Any job at all, drawn at random within and beyond the fields' limits, is answered in words and finite numbers."""

import json

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from calc.boundary import answer
from calc.job.field import Kind
from calc.job.fields import FIELDS
from calc.practice import USES
from tests.support.documents import demo
from tests.support.plain import report
from tests.support.verdicts import finite

QUANTITIES = [path for path, field in FIELDS.items() if field.kind is Kind.QUANTITY]
CHOICES = [path for path, field in FIELDS.items() if field.kind is Kind.CHOICE]


@st.composite
def changes(draw) -> dict:
    """Some fields anywhere between their limits (often at one of them), some choices, some left out."""
    chosen = draw(st.lists(st.sampled_from(QUANTITIES), max_size=14, unique=True))
    drawn = {}
    for path in chosen:
        field = FIELDS[path]
        number = draw(st.one_of(st.sampled_from([field.low, field.high]), st.floats(field.low, field.high)))
        drawn[path] = draw(st.sampled_from([None, f"{number:.4f}", f"{number:.4f}", f"{number:.4f}"]))
    for path in draw(st.lists(st.sampled_from(CHOICES), max_size=3, unique=True)):
        drawn[path] = draw(st.sampled_from(list(FIELDS[path].choices)))
    stock = draw(st.sampled_from([None, "3.8 4.2 4.6 5", "1 30"]))
    return drawn | {"front.stock": stock, "bike.use": draw(st.sampled_from(list(USES)))}


def dropped(drawn: dict) -> dict:
    """Left-out entries that the demo does not hold anyway would be an error of the test, not of the core."""
    document = demo()
    return {p: v for p, v in drawn.items() if v is not None or p.split(".")[1] in document.get(p.split(".")[0], {})}


@given(changes())
@settings(max_examples=120, suppress_health_check=[HealthCheck.too_slow, HealthCheck.large_base_example])
def test_any_job_is_answered(drawn):
    answered = report(demo(dropped(drawn)), with_bands=False)
    assert finite(answered)
    for end in answered["ends"].values():
        assert end["state"] in {"ok", "none", "refused"}
        assert (end["state"] == "ok") == (not end["problems"])
        for problem in end["problems"]:
            assert problem["message"].strip()
            assert "nan" not in problem["message"]
        if end["state"] == "ok":
            assert end["chosen"]["vetoes"] == []
            assert end["answer"]


@given(changes())
@settings(max_examples=15)
def test_any_job_comes_back_through_the_door(drawn):
    reply = json.loads(answer(json.dumps({"kind": "size", "job": demo(dropped(drawn))})))
    assert reply["kind"] == "report", reply
