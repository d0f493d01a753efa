"""What springs are called: a rate, both rates of an unequal pair, or what is fitted where nobody read it."""

from __future__ import annotations

import numpy as np

from calc.job import Job
from calc.model.marking import renamed
from calc.practice import Axle
from calc.report.quantity import rate_text
from calc.report.setups import pair_of
from calc.report.types import SetupReport
from calc.report.words import FITTED, Name, pair_text
from calc.sizing.choice import EndSizing

_SAME_RATE = 6  # decimals [N/mm] that tell rates apart


def rate_was_read(job: Job, axle: Axle) -> bool:
    """True where the rate of what is in is not assumed."""
    return job.entered(f"{axle}.rate") or job.choice(f"{axle}.rate_from") in ("wire", "tester")


def what_is_in_was_read(job: Job, axle: Axle, setup: SetupReport) -> bool:
    """True where what a setup is told by, of an air spring its pressure, was read of what is in."""
    return job.entered("front.air_pressure") if setup.pressure else rate_was_read(job, axle)


def spring_names(job: Job, axle: Axle, done: EndSizing, known: bool = False) -> Name:
    """What the rates on offer are called in a sentence; `known`: by rate also what is fitted and was not read."""
    setup = done.sized.setup
    rates = np.atleast_1d(setup.rate)
    splits = np.broadcast_to(setup.split, np.shape(rates))
    names = {round(float(rate), _SAME_RATE): pair_text(pair_of(setup.at(i))) for i, rate in enumerate(rates) if splits[i]}
    if (by_marking := renamed(job, axle)) is not None:
        names.setdefault(round(by_marking[0], _SAME_RATE), rate_text(by_marking[1]))
    if done.fitted is not None and not known and not rate_was_read(job, axle):
        names[round(float(rates[done.fitted]), _SAME_RATE)] = FITTED
    return lambda rate: names.get(round(rate, _SAME_RATE)) or rate_text(rate)
