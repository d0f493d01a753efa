"""What a report says, against what the core says of the same job when asked for that alone."""

from __future__ import annotations

import contextlib
import math
from typing import Any

from calc.impossible import Impossible
from calc.job import Job
from calc.sizing.choice import rider_span, size_end
from tests.support.plain import figures, report_of
from tests.support.verdicts_answer import fits

Data = dict[str, Any]


def check_ahead(job: Job, report: Data) -> None:
    """Compare each end's figures with its report; a +/- is the report's alone. Where the draws leave the choice open, what is told
    is what is in: then with the report before its draws.
    """
    for end, told in report["ends"].items():
        if told["state"] == "ok" and told["verdict"] == "open":
            told = report_of(job, with_bands=False)["ends"][end]
        ahead = figures(job, end)
        if told["state"] != "ok":
            assert ahead is None
            continue
        assert ahead is not None
        assert ahead["setup"] == {name: _bare(told["chosen"][name]) for name in ahead["setup"]}
        assert math.isclose(ahead["travel"], told["curve"]["stroke"][-1], abs_tol=0.005 + 1e-9)
        assert {name: window["low"] for name, window in ahead["windows"].items()} == {
            name: window["low"] for name, window in told["windows"].items()
        }


def check_span(job: Job, report: Data) -> None:
    """Whom a spring is right for comes with the bands, of a choice that fits; it is left out only where some rider near cannot be
    carried at all, or where the grid of riders has it fit none.
    """
    for end, told in report["ends"].items():
        if told["state"] != "ok" or told["sure"] is None:
            continue
        if told["verdict"] not in ("keep", "fit") or not fits(told["chosen"]):
            assert told["holds_for"] is None
        elif told["holds_for"] is None:
            with contextlib.suppress(Impossible):
                assert rider_span(job, end, size_end(job, end)) is None


def _bare(told: Any) -> Any:
    if isinstance(told, dict) and "plus_minus_95" in told:
        return told | {"plus_minus_95": None, "plus_minus_text": ""}
    return {name: _bare(part) for name, part in told.items()} if isinstance(told, dict) else told
