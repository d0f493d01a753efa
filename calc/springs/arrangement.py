"""How springs are put together in one strut. Sizing asks for a rate and a preload and gets the springs that it stands for.

A rate is that of the main spring (stacked, nested: the second one is kept) or the mean over a progressive spring's table.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Protocol

import numpy as np

from calc.array import Number
from calc.springs.helical import LinearSpring, Spring
from calc.springs.pair import NestedSprings, StackedSprings
from calc.springs.table import ForceTable, TableSpring


class Arrangement(Protocol):
    """What a strut's builder needs. All springs follow from preload + stroke, so that preload follows from a force."""

    def springs(self, rate: Number, preload: Number) -> tuple[Spring, ...]: ...

    def shortened_by(self, rate: Number, force: Number) -> Number: ...

    def main_shortened(self, rate: Number, shortened: Number) -> Number: ...

    def second_shortened(self, rate: Number, shortened: Number) -> Number | None: ...

    @property
    def second_closes(self) -> bool: ...


class _OneSpring:
    """What all arrangements with no second spring share."""

    def second_shortened(self, rate: Number, shortened: Number) -> Number | None:
        """No second spring."""
        del rate, shortened
        return None

    @property
    def second_closes(self) -> bool:
        """No second spring."""
        return False


@dataclass(frozen=True, eq=False)
class SingleSpring(_OneSpring):
    """One linear spring.

    Parameters: none.
    Formula: F = k (p + s).
    Source: Hooke's law.
    Example:
        >>> len(SingleSpring().springs(4.6, 3.0))
        1
    """

    def springs(self, rate: Number, preload: Number) -> tuple[Spring, ...]:
        """The spring of a rate [N/mm] at a preload [mm]."""
        return (LinearSpring(rate, preload),)

    def shortened_by(self, rate: Number, force: Number) -> Number:
        """Shortening [mm] under a force [N]."""
        return force / rate

    def main_shortened(self, rate: Number, shortened: Number) -> Number:
        """The spring's own part [mm] of a shortening [mm]: all of it."""
        del rate
        return shortened


@dataclass(frozen=True, eq=False)
class Stacked:
    """A main spring on a second one that closes.

    Parameters: second_rate [N/mm]; second_room [mm] until the second's coils touch.
    Formula: see `calc.springs.pair.StackedSprings`.
    Source: statics.
    Example:
        >>> float(Stacked(3.0, 20.0).main_shortened(6.0, 40.0))
        20.0
    """

    second_rate: Number
    second_room: Number

    def _stack(self, rate: Number, preload: Number) -> StackedSprings:
        return StackedSprings(rate, self.second_rate, self.second_room, preload)

    def springs(self, rate: Number, preload: Number) -> tuple[Spring, ...]:
        """The stack with a main spring of a rate [N/mm], shortened as a whole by a preload [mm]."""
        return (self._stack(rate, preload),)

    def shortened_by(self, rate: Number, force: Number) -> Number:
        """Shortening [mm] of the stack under a force [N]."""
        return self._stack(rate, 0.0).shortened_by(force)

    def main_shortened(self, rate: Number, shortened: Number) -> Number:
        """The main spring's own part [mm] of the stack's shortening [mm]."""
        return self._stack(rate, 0.0).force(shortened) / rate

    def second_shortened(self, rate: Number, shortened: Number) -> Number | None:
        """The second spring's own part [mm] of the stack's shortening [mm]."""
        return np.minimum(self._stack(rate, 0.0).force(shortened) / self.second_rate, self.second_room)

    @property
    def second_closes(self) -> bool:
        """Closing is what it is there for."""
        return True


@dataclass(frozen=True, eq=False)
class Nested:
    """A main spring with a second, shorter one beside it.

    Parameters: second_rate [N/mm]; later [mm], how much the main spring is shortened when the second one is reached.
    Formula: see `calc.springs.pair.NestedSprings`.
    Source: statics.
    Example:
        >>> float(Nested(2.0, 50.0).shortened_by(4.0, 320.0))
        70.0
    """

    second_rate: Number
    later: Number

    def springs(self, rate: Number, preload: Number) -> tuple[Spring, ...]:
        """Both, with a main spring of a rate [N/mm] at a preload [mm]."""
        return (NestedSprings(rate, self.second_rate, self.later, preload),)

    def shortened_by(self, rate: Number, force: Number) -> Number:
        """Shortening [mm] of the main spring under a force [N]."""
        return NestedSprings(rate, self.second_rate, self.later, 0.0).shortened_by(force)

    def main_shortened(self, rate: Number, shortened: Number) -> Number:
        """The main spring's own part [mm] of a shortening [mm]: all of it."""
        del rate
        return shortened

    def second_shortened(self, rate: Number, shortened: Number) -> Number | None:
        """The second spring's own part [mm] of a shortening [mm]: what lies beyond where it joins."""
        del rate
        return np.maximum(shortened - self.later, 0.0)

    @property
    def second_closes(self) -> bool:
        """It must stay open to full travel."""
        return False


@dataclass(frozen=True, eq=False)
class Progressive(_OneSpring):
    """A spring of a measured shape; another mean rate is taken as the same shape, scaled.

    Parameters: table of the fitted spring.
    Formula: see `calc.springs.table.TableSpring`.
    Source: an assumption for every spring but the measured one.
    Example:
        >>> arrangement = Progressive(ForceTable(((0.0, 0.0), (50.0, 210.0), (100.0, 440.0))))
        >>> round(float(arrangement.shortened_by(8.8, 420.0)), 6)
        50.0
    """

    table: ForceTable

    def springs(self, rate: Number, preload: Number) -> tuple[Spring, ...]:
        """The spring of a mean rate [N/mm] at a preload [mm]."""
        return (TableSpring(self.table, rate, preload),)

    def shortened_by(self, rate: Number, force: Number) -> Number:
        """Shortening [mm] under a force [N]."""
        return TableSpring(self.table, rate, 0.0).shortened_by(force)

    def main_shortened(self, rate: Number, shortened: Number) -> Number:
        """The spring's own part [mm] of a shortening [mm]: all of it."""
        del rate
        return shortened
