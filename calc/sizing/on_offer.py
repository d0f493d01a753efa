"""What a job's spring can be chosen from: the rates on offer, what is in among them by its marking, and how far apart they are."""

from __future__ import annotations

import numpy as np

from calc.array import Array
from calc.impossible import Impossible
from calc.job import Job
from calc.model import fitted
from calc.model.marking import renamed
from calc.practice import Axle
from calc.sizing.offers import offers, series

COARSE = 0.045  # of the rate: from there on a step is one that a rider feels; a judgement, common practice, no source


def step_of(job: Job, axle: Axle) -> float:
    """What the springs that are in may be off and stay [N/mm]: one step of the series, or the practice row's for a shelf; and
    never less than springs of one marking differ by. Steps are counted from a marking: what is in may be off that by more; and
    from the nearest of the series, where it is none of these: a 4.9 among 4.8 and 5.0 stays where one of the two would. A coarse
    step leaves room for that already.

    Parameters: job; axle.
    Returns: step [N/mm].
    Raises: Impossible as `calc.model.fitted.rate`.
    Formula: none.
    Source: common practice, no source.
    Example: see `tests/unit/sizing/test_sizing.py`.
    """
    usual, sold = job.usual("fork step" if axle == "front" else "shock step"), job.usual("sold spring rate")
    assert usual is not None
    assert sold is not None
    rate = float(fitted.rate(job, axle))
    now, called = renamed(job, axle) or (rate, rate)
    step, beside = usual.typical, 0.0
    if job.choice(f"{axle}.buy").startswith("series"):
        step = job.number(f"{axle}.step")
        beside = abs(called - step * round(called / step)) if step < COARSE * rate else 0.0
    return max(step + beside, sold.high / 100.0 * rate) + abs(now - called)


def on_offer(job: Job, axle: Axle, springs: int) -> tuple[Array, Array]:
    """Rates on offer and the split of each, the fitted one among them; pairs where there are two springs to make one of.

    Parameters: job; axle; springs of the end [-].
    Returns: rates [N/mm], ascending, and the split [N/mm] of each.
    Raises: Impossible where a shelf holds none.
    Formula: none.
    Source: common practice, no source.
    Example: see `tests/unit/sizing/test_sizing.py`.
    """
    now, split = float(fitted.rate(job, axle)), float(fitted.split(job, axle))
    _, called = renamed(job, axle) or (now, now)
    kind, _, pairs = job.choice(f"{axle}.buy").partition("-")
    mixed = pairs != "" and springs == 2
    if kind == "series":
        sold = series(job.number(f"{axle}.step"), called)
    else:
        sold = np.array(job.fields[f"{axle}.stock"].rates)
        if len(sold) == 0:
            path = f"{axle}.stock"
            raise Impossible("stock", "No rates on the shelf are entered.", "Enter them, or choose a stepped series.", path)
    rates, splits = offers(sold, mixed, called, split)
    # what is in is told from what is on offer by its marking, and is as stiff as it is known to be
    rates = np.where(np.isclose(rates, called, rtol=1e-9), now, rates)
    order = np.argsort(rates, kind="stable")
    return rates[order], splits[order]
