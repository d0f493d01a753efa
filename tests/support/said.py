"""A customer's readings as they are typed, and the verdict on them."""

from __future__ import annotations

from calc.job.customer import LENGTHS
from calc.report.customer import my_bike, verdict_text
from calc.report.types import Verdict


def said(lengths, use="enduro", rider="86", **more):
    return {"bike.use": use, "rider.mass": rider, **dict(zip(LENGTHS, map(str, lengths), strict=True))} | {
        path.replace("__", "."): value for path, value in more.items()
    }


def told(*how, **more) -> Verdict:
    found = my_bike(said(*how, **more))
    assert found.verdict is not None, verdict_text(found)
    return found.verdict


def verdict_text_of(found: Verdict) -> str:
    return " ".join([found.words, found.height, found.do_not, found.do_not_more, found.narrows, *found.how, *found.others])
