"""How often each spring is chosen: every draw sized and judged again by the same rule."""

from __future__ import annotations

from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass

import numpy as np

from calc.array import Array
from calc.model.inputs import EndInputs
from calc.sizing.choice import EndSizing, chosen_steps, resized
from calc.sizing.coil import Sized
from calc.sizing.rule import WITHIN, Decision

REACH = 3  # candidates tried either way of the choice and of what is in, at first
SETTLED = 0.5  # of the draws: the least for the choice and its neighbours within one step, for a spring to be told,
ITSELF = 0.2  # and for the choice itself: of a span that is all alike none is


@dataclass(frozen=True, eq=False)
class Choices:
    """What the draws choose.

    Parameters: sized and decision of every draw, over the candidates from index `first` on; counts of draws by rate [N/mm] or
    pressure [MPa, gauge], as they are sold or read; settled, whether a spring can be told.
    """

    sized: Sized
    decision: Decision
    first: int
    counts: Mapping[float, int]
    settled: bool


def choices(here: EndInputs, done: EndSizing) -> Choices:
    """Size and judge every draw.

    Parameters: here, drawn inputs of the end; done, its nominal sizing.
    Returns: Choices.
    Raises: Impossible as `calc.sizing.choice.resized`.
    Formula: settled where at least half of the draws choose the spring, or one within a step of it, and a fifth the spring
    itself, no fewer than would keep what is in; a pressure is always told, since pumping is undone in a minute.
    Source: JCGM 101:2008 for the draws; the half and the fifth are our own convention; nobody changes a spring for one that fewer
    runs choose than keep what is in: common practice, no source.
    Example: see `calc.uncertainty.bands.bands`.
    """
    if here.air is not None:
        sized, decision = resized(here, done)
        return Choices(sized, decision, 0, _counts(chosen_steps(sized, decision)), True)
    sized, decision, first = _wide_enough(here, done)
    nominal = np.broadcast_to(done.sized.setup.rate, np.shape(done.decision.key))
    rates = np.where(decision.choice < 0, np.nan, nominal[first + np.maximum(decision.choice, 0)])
    off = np.abs(rates - nominal[done.choice])
    near, itself = np.mean(off <= done.step * (1.0 + WITHIN)), np.mean(off <= WITHIN)
    assert done.fitted is not None
    stay = np.mean(np.abs(rates - nominal[done.fitted]) <= WITHIN)
    return Choices(sized, decision, first, _counts(rates), bool(near >= SETTLED and itself >= max(ITSELF, stay)))


def _wide_enough(here: EndInputs, done: EndSizing) -> tuple[Sized, Decision, int]:
    """Over candidates so far either way of the choice and of what is in that no draw goes to the edge."""
    count, own = len(done.decision.key), done.fitted
    assert own is not None
    low, high, reach = min(done.choice, own), max(done.choice, own), REACH
    while True:
        first, last = max(low - reach, 0), min(high + reach + 1, count)
        sized, decision = resized(here, done, slice(first, last))
        choice = decision.choice
        if not (np.any((choice == 0) & (first > 0)) or np.any((choice == last - first - 1) & (last < count))):
            return sized, decision, first
        reach *= 2


def rate_wanted(done: EndSizing, sized: Sized, decision: Decision, row: int, index: int) -> Array:
    """The rate that would ride at the yardstick, by the slope of frequency on rate about one candidate.

    Parameters: done, the nominal sizing; sized and decision of draws or steps; row of the candidate
    there [-], index in `done` [-].
    Returns: rate [N/mm] of each draw.
    Raises: nothing.
    Formula: k - ln(f / f_yardstick) / (d ln f / dk).
    Source: none.
    Example: see `calc.uncertainty.bands.bands`.
    """
    rates, keys = np.asarray(done.sized.setup.rate), np.log(np.asarray(done.sized.figures.frequency))
    low, high = max(index - 1, 0), min(index + 1, len(keys) - 1)
    slope = (keys[high] - keys[low]) / (rates[high] - rates[low]) if high > low else 1.0
    frequency = np.asarray(sized.figures.frequency)
    rate = np.broadcast_to(sized.setup.rate, frequency.shape)[row]
    return np.asarray(rate - np.log(frequency[row] / decision.yardstick.frequency) / slope)


def _counts(steps: Array) -> Mapping[float, int]:
    return Counter(steps[~np.isnan(steps)].tolist())
