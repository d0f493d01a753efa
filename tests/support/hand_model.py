"""An independent hand model of the demo's fork: plain arithmetic and bisection, nothing of the core's. Numbers or arrays."""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import Any

import numpy as np

G = 9.80665


def bisect(function, low, high, steps: int = 60):
    """Root between low and high, element by element; the function rises or falls throughout."""
    rising = np.asarray(function(high)) > 0
    low, high = low + 0.0 * rising, high + 0.0 * rising
    for _ in range(steps):
        middle = 0.5 * (low + high)
        above = (np.asarray(function(middle)) > 0) == rising
        low, high = np.where(above, low, middle), np.where(above, middle, high)
    return 0.5 * (low + high)


@dataclass
class Fork:
    """Readings of the demo, each a number or an array of draws."""

    alone: Any = 54.5  # kg, front axle
    aboard: Any = 96.2
    rider: Any = 104.0
    sold_rider: Any = 87.0
    unsprung: Any = 16.0
    rake: Any = 26.5  # degrees
    seal: Any = 48.0  # mm
    collapsed: Any = 308.0
    travel: Any = 300.0
    outer: Any = 50.6
    depth: Any = 32.0
    raised: Any = 12.0  # by 20 ml
    steel: Any = 51e3  # mm3 at 4.2 N/mm
    cap: Any = 20e3
    washers: Any = 8e3
    altitude: Any = 400.0  # m
    n: Any = 1.33
    sold_rate: Any = 4.2
    sold_preload: Any = 4.0
    sold_gap: Any = 126.0

    def __post_init__(self):
        self.area = math.pi / 4 * self.seal**2
        self.below = 20e3 / self.raised
        self.air = 0.101325 * (1 - 0.0065 * self.altitude / 288.15) ** 5.2558797  # MPa, ISO 2533
        self.cos = np.cos(np.radians(self.rake))
        self.load = (self.aboard - self.unsprung) * G
        self.load_alone = (self.alone - self.unsprung) * G
        share = (self.aboard - self.alone) / self.rider
        self.sold_load = (self.alone + self.sold_rider * share - self.unsprung) * G

    def leg(self, rate, preload, gap, stroke, n=1.0, settled=0.0):
        """Force of one leg along its axis [N]."""
        gas = math.pi / 4 * self.outer**2 * self.depth + self.below * (gap - self.depth)
        gas = gas + self.area * self.collapsed - self.cap - self.washers - self.steel * np.sqrt(rate / 4.2)
        ride = gas - self.area * settled
        pressure = self.air * gas / ride * (ride / (gas - self.area * stroke)) ** n
        return rate * (preload + stroke) + (pressure - self.air) * self.area

    def wheel(self, rate, preload, gap, stroke, n=1.0, settled=0.0):
        """Force of both legs at the wheel, vertical [N]."""
        return 2 * self.leg(rate, preload, gap, stroke, n, settled) / self.cos

    def sag(self, rate, preload, gap, load):
        """Stroke at which springs and slow gas carry a load [mm]."""
        return bisect(lambda s: self.wheel(rate, preload, gap, s) - load, 0.0, 250.0)

    def frequency(self, rate, preload, gap, load):
        """Ride frequency about the sag [Hz], by the slope of the working curve."""
        s = self.sag(rate, preload, gap, load)
        rise = self.wheel(rate, preload, gap, s + 0.01, self.n, s) - self.wheel(rate, preload, gap, s - 0.01, self.n, s)
        return np.sqrt(rise / 0.02 / self.cos * 1000 / (load / G)) / (2 * math.pi)

    def end_force(self, rate, preload, gap, load):
        """Force at the wheel at full travel, fast about the sag [N]."""
        return self.wheel(rate, preload, gap, self.travel, self.n, self.sag(rate, preload, gap, load))

    def multiple(self):
        """End force of the setup as sold over the load of the rider it is sold for."""
        return self.end_force(self.sold_rate, self.sold_preload, self.sold_gap, self.sold_load) / self.sold_load

    def sized(self, rate):
        """Preload and gap for 66 mm of sag and the multiple of the setup as sold."""
        multiple = self.multiple()

        def preload(gap):
            return (self.load * self.cos / 2 - self.leg(rate, 0.0, gap, 66.0)) / rate

        gap = bisect(lambda g: self.wheel(rate, preload(g), g, self.travel, self.n, 66.0) - multiple * self.load, 90.0, 250.0)
        return preload(gap), gap
