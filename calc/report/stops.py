"""Where a fork's stroke ends, and what comes first: topped out, bump rubber, coils that touch, oil lock. In words."""

from __future__ import annotations

from collections.abc import Iterator, Mapping

import numpy as np

from calc.end.assembly import ForkAssembly
from calc.end.figures import Figures
from calc.end.limits import Limits
from calc.end.setup import Setup
from calc.impossible import decimals_apart
from calc.job import Job
from calc.report.quantity import number_text
from calc.report.types import LegEvent
from calc.springs.topout import TopOutSpring

STEPS = 601  # of the stroke, between which coils that touch are looked for


def events(
    job: Job, limits: Limits, fork: ForkAssembly, setup: Setup, figures: Figures | None, start: float, locks: Mapping[str, float]
) -> tuple[LegEvent, ...]:
    """What happens along the stroke, in its order.

    Parameters: job; limits, what can be built; fork, built to the setup; setup; figures, None for a leg that locks; start [mm], how
    far from full extension it hangs; locks [mm], the stroke from hanging at which the gas of each leg is used up.
    Returns: events.
    Raises: nothing.
    Formula: see `calc.springs` and `calc.gas`.
    Source: none.
    """
    travel = job.number("front.travel") - start
    found = [
        *_topped(fork, setup, figures, start),
        *_rubber(job, travel),
        *_bound(limits, fork, setup, travel),
        *(_locked(side, at, travel) for side, at in locks.items() if np.isfinite(at)),
        LegEvent("full", travel, f"Full travel at {_mm(travel)}."),
    ]
    return tuple(sorted(found, key=lambda event: event.stroke))


def _topped(fork: ForkAssembly, setup: Setup, figures: Figures | None, start: float) -> Iterator[LegEvent]:
    if figures is None:
        return
    if start:
        yield LegEvent("pulled in", 0.0, f"Hangs {_mm(start)} short of full extension: the balance chamber pulls it in.")
        return
    strut, _ = fork.end(setup).struts[0]
    spring = next((one for one in strut.springs if isinstance(one, TopOutSpring)), None)
    bad, and_so = bool(figures.free.topped_out), ""
    if bad:
        and_so = " With the bike alone it stays there: preload and gas hold more than its weight."
    if spring is None:
        yield LegEvent("topped out", 0.0, f"Topped out at 0 mm, wheel hanging.{and_so}", bad)
        return
    until = float(np.asarray(spring.held / spring.rate))
    yield LegEvent("topped out", 0.0, f"On the top-out spring from 0 to {_mm(until)}.{and_so}", bad)


def _rubber(job: Job, travel: float) -> Iterator[LegEvent]:
    if job.choice("front.rubber") != "none" and job.known("front.rubber_length"):
        at = travel - job.number("front.rubber_length")
        yield LegEvent("rubber", at, f"The bump rubber is touched at {_mm(at)}.")


def _bound(limits: Limits, fork: ForkAssembly, setup: Setup, travel: float) -> Iterator[LegEvent]:
    """Where the main spring's coils touch; its lengths are the fitted spring's, which the vetoes take for every candidate too."""
    free, solid = limits.free_length, limits.solid_length
    if fork.springs == 0 or free is None:
        return
    room, rate = float(np.asarray(free - (0.0 if solid is None else solid))), fork.rates(setup)[0]
    strokes = np.linspace(0.0, travel, STEPS)
    left = room - np.asarray(fork.arrangement.main_shortened(rate, np.maximum(setup.preload + strokes, 0.0)))  # type: ignore[arg-type]
    if left[-1] > 0:
        if solid is None:
            return
        yield LegEvent("coil bind", travel, f"{_mm(float(left[-1]))} left at full travel before the coils touch.")
        return
    at = float(np.interp(0.0, -left, strokes))
    what = "The coils touch" if solid is not None else "By its free length the spring has no length left"
    yield LegEvent("coil bind", at, f"{what} at {_mm(at)}, before full travel.", bad=True)


def _locked(side: str, at: float, travel: float) -> LegEvent:
    whose = "" if side == "each leg" else f", {side}"
    if at <= travel:
        return LegEvent("oil lock", at, f"Oil-locked at {_mm(at)}{whose}: no gas is left there.", bad=True)
    places = decimals_apart(at, travel, 0)
    spare = number_text(at - travel, places)
    return LegEvent("oil lock", at, f"Would be oil-locked at {number_text(at, places)} mm{whose}, {spare} mm past full travel.")


def _mm(value: float) -> str:
    return f"{number_text(value, 0)} mm"
