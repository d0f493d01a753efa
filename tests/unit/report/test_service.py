"""What is due: the arithmetic by hand, its sentences read back, both ways of counting, and every spoilt entry."""

import re

import pytest

from calc.practice import usual
from tests.support.documents import changed, demo
from tests.support.plain import report

HOURS = {"service.now_hours": "42 h", "service.fork_last_hours": "12 h", "service.fork_every_hours": "20 h"}


def bare(changes):
    """The demo with nothing of its own said of hours."""
    job = demo()
    del job["service"]
    return changed(job, changes)


def service(changes):
    return report(bare(changes), with_bands=False)["service"]


def end(found, which="front"):
    return next(one for one in found["ends"] if one["end"] == which)


def test_nothing_is_said_where_nothing_is_entered():
    assert service({}) is None
    assert service({"service.counted": "km"}) is None


@pytest.mark.parametrize(
    ("now", "last", "every", "words"),
    [
        (42, 12, 20, "Fork: service was due at 32 h and is 10 h overdue."),
        (42, 30, 20, "Fork: next service due at 50 h, in 8 h."),
        (42, 22, 20, "Fork: next service due at 42 h: now."),
        (0, 0, 20, "Fork: next service due at 20 h, in 20 h."),
    ],
)
def test_due_is_last_and_interval(now, last, every, words):
    found = end(
        service(
            {
                f"service.{key}_hours": f"{value} h"
                for key, value in zip(("now", "fork_last", "fork_every"), (now, last, every), strict=True)
            }
        )
    )
    assert found["words"] == words
    assert (found["due"]["value"], found["left"]["value"]) == (last + every, last + every - now)


@pytest.mark.parametrize("last", range(0, 61, 7))
def test_words_and_numbers_agree(last):
    found = end(service(HOURS | {"service.fork_last_hours": f"{last} h"}))
    numbers = [int(one) for one in re.findall(r"\d+", found["words"])]
    assert numbers == [one for one in (last + 20, abs(last + 20 - 42)) if one]
    assert ("overdue" in found["words"]) == (last + 20 < 42)


def test_an_interval_that_nobody_entered_is_the_trades_and_said_so():
    found = service({"service.shock_last_hours": "10 h"})
    assert end(found, "rear")["due"]["value"] == 10 + usual("shock service hours", "enduro").typical
    assert "common practice, no source" in found["note"]
    assert "maker's manual" in found["note"]
    every = {f"service.{what}_every_hours": "30 h" for what in ("fork", "shock")}
    assert "common practice" not in service(HOURS | every)["note"]


def test_without_the_meter_only_the_due_is_told():
    found = end(service({"service.fork_last_hours": "12 h", "service.fork_every_hours": "20 h"}))
    assert found["words"] == "Fork: next service due at 32 h. Read the meter to see how long that is."
    assert found["left"] is None


def test_without_the_last_service_nothing_is_guessed():
    found = end(service({"service.now_hours": "42 h"}))
    assert found["due"] is None
    assert found["words"] == "Fork: nobody entered when it was last serviced; 40 h is usual between services."


def test_kilometres_are_counted_alike():
    found = end(
        service(
            {
                "service.counted": "km",
                "service.now_km": "23,000",
                "service.fork_last_km": "4000 km",
                "service.fork_every_km": "15000",
            }
        )
    )
    assert found["words"] == "Fork: next service due at 19000 km. Read the meter to see how long that is."  # 23,000 is refused
    found = end(
        service(
            {
                "service.counted": "km",
                "service.now_km": "23000",
                "service.fork_last_km": "4000 km",
                "service.fork_every_km": "15000",
            }
        )
    )
    assert found["words"] == "Fork: service was due at 19000 km and is 4000 km overdue."


@pytest.mark.parametrize("entry", ["-1 h", "nan", "inf", "60000 h", "42 km", "9**9**9"])
def test_a_spoilt_count_is_named_and_stops_no_answer(entry):
    whole = report(bare(HOURS | {"service.now_hours": entry}), with_bands=False)
    problem = whole["fields"]["service.now_hours"]["problem"]
    assert problem["message"].startswith("Meter now:")
    assert whole["ends"]["front"]["state"] == whole["ends"]["rear"]["state"] == "ok"
    assert end(whole["service"])["left"] is None


def test_every_riding_has_an_interval_fork_before_shock():
    from calc.practice import USES

    for use in USES:
        for unit in ("hours", "distance"):
            assert usual(f"fork service {unit}", use).typical <= usual(f"shock service {unit}", use).typical, use
