"""What is set at an air spring, and in which steps."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from calc.array import Array, Number
from calc.end.assembly import ForkAssembly
from calc.end.setup import Setup
from calc.leg.air import AirLeg, Pumped
from calc.leg.open import DEEPEST_GAP

SERIES_FROM, SERIES_TO = 0.8, 1.2  # times the pressure for the sag: what is shown of other pressures
_CLEAR_GAP, _CLEAR_OIL = 0.05, 50.0  # mm, mm3: how near to a lock the search goes
AMOUNT_STEPS = {"gap": 1.0, "oil": 1000.0}  # mm, mm3: what they are read to
_SECOND_LEAST, _SECOND_MOST = 0.1, 3.0  # MPa gauge, a pump's range


@dataclass(frozen=True, eq=False)
class AirSetting:
    """What is set at an air spring, and in which steps.

    Parameters: base, the setup as found, of which all else is kept; control, what meets the end-of-travel target: "gap", "oil"
    (or spacers in the main chamber) or "second" (the second volume's pressure); step [MPa], what a gauge shows.
    """

    base: Setup
    control: str
    step: float

    def set_to(self, pressure: Number, amount: Number) -> Setup:
        """The base at a pressure [MPa, gauge] and an amount of the control."""
        if self.control == "gap":
            return replace(self.base, gap=amount, air=Pumped(pressure))
        return replace(self.base, air=replace(Pumped(pressure), **{self.control: amount}))

    def amount(self, setup: Setup) -> Number:
        """The control's amount in a setup."""
        amount = setup.gap if self.control == "gap" else getattr(setup.air, self.control)
        assert amount is not None
        return amount

    def pressures(self, about: float, found: float) -> Array:
        """Pressures [MPa] on offer about one: the gauge's steps, and the one found where it is among them."""
        steps = np.arange(np.ceil(SERIES_FROM * about / self.step), np.floor(SERIES_TO * about / self.step) + 1)
        series = np.round(steps * self.step, 9)
        inside = SERIES_FROM * about <= found <= SERIES_TO * about
        return np.sort(np.append(series[np.abs(series - found) > 1e-9], found)) if inside else series

    def nearest(self, pressure: Array, found: float, most: float = np.inf) -> Array:
        """Each pressure [MPa] as the gauge's step nearest to it up to the most it takes, or the one found where that is nearer."""
        highest = np.floor(most / self.step + 1e-6)
        step = np.round(np.minimum(np.round(pressure / self.step), highest) * self.step, 9)
        return np.where((np.abs(pressure - found) <= np.abs(pressure - step)) & (found <= most + 1e-9), found, step)

    def hardest_softest(self, assembly: ForkAssembly) -> tuple[Number, Number]:
        """Amounts between which an end force is looked for."""
        if self.control == "gap":
            return assembly.lock_gap(self.base) + _CLEAR_GAP, DEEPEST_GAP
        if self.control == "oil":
            assert isinstance(assembly.gas, AirLeg)
            return assembly.gas.oil_locks - _CLEAR_OIL, -assembly.gas.spring.volume  # a chamber twice as large
        return _SECOND_MOST, _SECOND_LEAST

    def rounded(self, amount: Array, hardest: Number) -> Array:
        """To 1 mm, 1 ml or the gauge's step; where that would lock the leg, to the softer side."""
        step = AMOUNT_STEPS.get(self.control, self.step)
        nearest, softer = np.round(amount / step), np.ceil(amount / step) if self.control == "gap" else np.floor(amount / step)
        past = nearest * step < hardest if self.control == "gap" else nearest * step > hardest
        return np.round(np.where(past, softer, nearest) * step, 9)
