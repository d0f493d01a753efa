"""How springs are put together in one strut. Sizing asks for a rate and a preload and gets the springs that it stands for."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Protocol

from calc.array import Number
from calc.springs import LinearSpring, Spring


class Arrangement(Protocol):
    """What a strut's builder needs. `straight`: force grows along a straight line with preload, so sag solves in closed form."""

    @property
    def straight(self) -> bool: ...

    def springs(self, rate: Number, preload: Number) -> tuple[Spring, ...]: ...


@dataclass(frozen=True)
class SingleSpring:
    """One linear spring.

    Parameters: none.
    Formula: F = k (p + s).
    Source: Hooke's law.
    Example:
        >>> len(SingleSpring().springs(4.6, 3.0))
        1
    """

    straight: bool = True

    def springs(self, rate: Number, preload: Number) -> tuple[Spring, ...]:
        """The spring of a rate [N/mm] at a preload [mm]."""
        return (LinearSpring(rate, preload),)
