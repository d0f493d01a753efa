"""One fork leg pushed slowly on the bench: what the model expects in each state that a cartridge may be in."""

from __future__ import annotations

from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np

from calc.array import Array, Number
from calc.end.strut import Strut
from calc.gas.chamber import ISOTHERMAL, Chamber, Gas, circle
from calc.gas.joined import one_space
from calc.impossible import Impossible
from calc.job import Job
from calc.leg.open import OpenLeg
from calc.leg.sealed import SealedLeg
from calc.model import fitted
from calc.model.cartridge import sealed_leg, state
from calc.model.conditions import Conditions, conditions
from calc.model.fork import leak_gap, over_the_oil
from calc.model.gap import by_volume, gap_filled, own_gap
from calc.model.gaps import fitted_rates
from calc.model.push_read import OPEN, Push, as_pushed, states_of
from calc.model.stops import rubber
from calc.springs.helical import Spring

_RESTS_ON = ("front.", "place.")
_NEARLY = 0.98  # of the stroke at which the gas is used up: beyond, a leg is as good as solid


@dataclass(frozen=True, eq=False)
class PushedLeg:
    """One leg on the bench, in one state.

    Parameters: job, drawn or not; how, its state; gap [mm], the one last set, in the user's convention; around, the space over its
    oil by that gap, cartridge shut; rate [N/mm] of the spring that belongs in it, None for none; strut, what is pushed.
    """

    job: Job
    how: str
    gap: Number
    around: OpenLeg
    rate: Number | None
    strut: Strut

    def force(self, stroke: Number) -> Array:
        """Force [N] at a stroke [mm], slow and without friction; NaN where hardly any gas is left."""
        return np.where(np.asarray(stroke) < _NEARLY * self.lock, self.force_unbounded(stroke), np.nan)

    def force_unbounded(self, stroke: Number) -> Array:
        """The same, going on straight where hardly any gas is left: for comparing, never for telling."""
        safe = np.minimum(stroke, _NEARLY * self.lock)
        force = self.strut.force(safe, ISOTHERMAL) + self.strut.rubber_force(stroke)
        return np.asarray(force + self.strut.rate_at(safe, ISOTHERMAL) * (stroke - safe))

    @cached_property
    def lock(self) -> Number:
        """Stroke [mm] at which a space is used up."""
        locks = np.broadcast_arrays(*(np.asarray(gas.lock_stroke(), dtype=float) for gas in self.strut.gases))
        return np.asarray(np.min(np.stack(locks), axis=0))

    def gap_now(self) -> Number:
        """Gap [mm] that the same oil shows by now; opened, read as in an open leg. Impossible where it cannot be read so."""
        if self.how in (OPEN, "as built"):
            return self.gap
        if self.how == "seal leaking":
            return leak_gap(self.job, bench(self.job), self.rate, self.gap, shut=False)
        hanging, convention = self.around.hanging(self.rate, self.gap), self.around
        if self.how == "oil moved":
            hanging = hanging - self.job.value("front.oil_moved")
        else:
            convention = over_the_oil(self.job, bench(self.job), self.how)
            if self.job.choice("front.cartridge_fill") == "gas":
                hanging = hanging - circle(self.job.value("front.damper_rod")) * self.around.drawn_out
                hanging = hanging + self.job.value("front.cartridge_gas")
            else:  # its piston has gone to its stop, as where it leaks
                leaking = _gases(self.job, self.around, "seal leaking", bench(self.job))
                assert isinstance(leaking, OpenLeg)
                hanging = leaking.hanging(self.rate, self.gap)
        return convention.gap_of_gas(hanging, self.rate)


def bench(job: Job) -> Conditions:
    """Where legs are pushed: where they are bled, as warm as there.

    Parameters: job.
    Returns: Conditions.
    Raises: as `calc.model.conditions.conditions`.
    Formula: none.
    Source: none.
    Example: see `tests/unit/model/test_pushed.py`.
    """
    at = conditions(job)
    return at.ridden(at.bleed, at.bled_temperature)


def pushed_leg(job: Job, push: Push, how: str, further: Number = 0.0) -> PushedLeg:
    """The pushed leg in one state.

    Parameters: job, drawn or not, as `as_pushed` leaves it; push; how, its state; further [mm] that its gap is from the one read.
    Returns: PushedLeg.
    Raises: Impossible as `calc.model.fork.fork`.
    Formula: the gap around the cartridge as built fixes the oil; with the spring out, its steel and spacer are gas. Opened: the two
    gases are one, let off to the outside.
    Source: oil is conserved; geometry.
    Example: see `tests/unit/model/test_pushed.py`.
    """
    at = bench(job)
    around = over_the_oil(job, at, "as built")
    rate = fitted_rates(job)[push.right]
    gap = _gap(job, around, push, rate) + further
    inside = around
    if rate is not None and not push.spring_in:
        inside = replace(around, others=around.others - around.steel_of(rate) - around.spacer)
    springs: tuple[Spring, ...] = ()
    bump = rubber(job, "front", job.value("front.travel"))
    if rate is not None and push.spring_in:
        arrangement = fitted.arrangement(job, "front", job.value("front.travel"))
        springs = arrangement.springs(rate, fitted.preload(job, "front"))
    gases = _gases(job, inside, how, at).gases(rate, gap) if how != "opened into one" else _opened(job, inside, at, rate, gap)
    return PushedLeg(job, how, gap, around, rate, Strut(springs, gases, at.ambient, bump))


def _gap(job: Job, around: OpenLeg, push: Push, rate: Number | None) -> Number:
    """The gap last set while the cartridge was shut, in the user's convention."""
    side = "right" if push.right else "left"
    if job.choice("front.air") == "sealed cartridge" and state(job, as_sold=False) == "opened into one":
        return own_gap(job, "front.push_gap", lambda: around, rate)
    if by_volume(job):
        return gap_filled(job, around, side, rate)
    read = own_gap(job, f"front.gap_{side}", lambda: around, rate)
    leaks = job.choice("front.air") == "sealed cartridge" and state(job, as_sold=False) == "seal leaking"
    return leak_gap(job, bench(job), rate, read, shut=True) if leaks else read


def _gases(job: Job, around: OpenLeg, how: str, at: Conditions) -> OpenLeg | SealedLeg:
    if how == OPEN:
        return around
    leg = sealed_leg(job, around, how, at.charged, None, set_shut=True)
    assert isinstance(leg, OpenLeg | SealedLeg)
    return leg


def _opened(job: Job, around: OpenLeg, at: Conditions, rate: Number | None, gap: Number) -> tuple[Gas, ...]:
    """Both spaces with the oil they had, joined and let off to the outside where they are bled."""
    if job.choice("front.cartridge_fill") != "gas":  # its piston has gone to its stop, as where it leaks: bled, that is the same
        return _gases(job, around, "seal leaking", at).gases(rate, gap)
    spaces = _gases(job, around, "as built", at).gases(rate, gap)
    assert all(isinstance(space, Chamber) for space in spaces)
    whole = one_space(tuple(space for space in spaces if isinstance(space, Chamber)))
    let_off = at.bleed * whole.volume(job.value("place.bled_stroke")) / whole.volume0
    return (replace(whole, pressure0=let_off),)


def why_not(job: Job, push: Push) -> str:
    """Why a push says nothing, in words; empty where it says something.

    Parameters: job, not drawn; push.
    Returns: a sentence, or nothing.
    Raises: nothing.
    Formula: no stroke beyond fully collapsed; the leg in some state works at all.
    Source: none.
    Example: see `tests/unit/model/test_pushed.py`.
    """
    if any(problem.path == "bike.use" or problem.path.startswith(_RESTS_ON) for problem in job.problems):
        return "An entry that this rests on is refused. Mend it first."
    most, deepest = job.number("front.collapsed_stroke"), float(push.strokes[-1])
    if deepest > most + 4.0 * push.stroke_off:
        return f"Pushed to {deepest:.0f} mm: the leg is fully collapsed at {most:.0f} mm. Check the strokes."
    try:
        pushed_leg(as_pushed(job, push), push, states_of(job)[0])
    except Impossible as error:
        return f"This leg can't be worked out: {error.message} {error.way_out}".rstrip()
    return ""
