"""The two ends of a motorcycle, by name."""

from __future__ import annotations

from typing import Literal

Axle = Literal["front", "rear"]
AXLES: tuple[Axle, Axle] = ("front", "rear")
