"""Will it fit: width against bore and core, and the spacer or collar that another spring's length asks for."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from calc.array import Flags, Number

SAME = 1e-9  # mm: what stands at a limit is within it, whatever its last digits


def outside_closed(outside: Number, inside: Number, free: Number, solid: Number) -> Number:
    """Outside diameter of a spring with its coils closed.

    Parameters: outside, inside diameter [mm] when free; free, solid length [mm].
    Returns: diameter [mm], a little above `outside`.
    Raises: nothing.
    Formula: D' = sqrt(D^2 + (p^2 - d^2) / pi^2), outside = D' + d; wire d, mean diameter D, pitch p = d free / solid.
    Source: geometry: the wire of one turn keeps its length, its turn flattens; ground ends.
    Example:
        >>> round(float(outside_closed(36.0, 28.0, 470.0, 160.0)), 2)
        36.19
    """
    wire = 0.5 * (outside - inside)
    mean, pitch = outside - wire, wire * free / solid
    return np.sqrt(mean**2 + (pitch**2 - wire**2) / np.pi**2) + wire


def seat_move(preload: Number, found_preload: Number, longer: Number) -> Number:
    """How far a collar goes in, or how much longer spacers must be, against as found.

    Parameters: preload [mm] wanted; found_preload [mm]; longer [mm], by which the new spring is longer than the fitted one.
    Returns: move [mm]; below 0 the collar goes out, or the spacers are cut.
    Raises: nothing.
    Formula: (p - p_found) - (free length - fitted free length).
    Source: geometry.
    Example:
        >>> seat_move(3.0, 6.0, 2.0)
        -5.0
    """
    return preload - found_preload - longer


@dataclass(frozen=True, eq=False)
class Fit:
    """Sizes of a spring other than the fitted one, and of its place. None: not known, not checked.

    Parameters: fitted_rate [N/mm], whose spring is in and fits; found_preload [mm]; fitted_free, free, solid lengths;
    outside, inside diameters; bore around it, core inside it [mm]; thread [mm] left to the collar; spacers [mm] that are in.
    Formula: see `outside_closed` and `seat_move`.
    Source: geometry.
    """

    fitted_rate: Number
    found_preload: Number
    fitted_free: Number | None = None
    free: Number | None = None
    solid: Number | None = None
    outside: Number | None = None
    inside: Number | None = None
    bore: Number | None = None
    core: Number | None = None
    thread: Number | None = None
    spacers: Number | None = None

    @property
    def longer(self) -> Number:
        """By how much [mm] the new spring is longer; 0 where either is not known."""
        return 0.0 if self.free is None or self.fitted_free is None else self.free - self.fitted_free

    @property
    def widest(self) -> Number | None:
        """Outside diameter [mm] with the coils closed, or free where that cannot be worked out."""
        if self.outside is None or self.inside is None or self.free is None or self.solid is None:
            return self.outside
        return outside_closed(self.outside, self.inside, self.free, self.solid)

    def fitted(self, rates: Number) -> Flags:
        """True for the spring that is in."""
        return np.isclose(rates, self.fitted_rate, rtol=1e-6)

    def move(self, rates: Number, preload: Number) -> Number:
        """How far [mm] the seat moves against as found, for springs of these rates at a preload."""
        return seat_move(preload, self.found_preload, np.where(self.fitted(rates), 0.0, self.longer))

    def preload_between(self, rates: Number) -> tuple[Number, Number]:
        """The preloads [mm] that spacers can be cut, and the collar screwed in, for: springs of these rates."""
        start = self.found_preload + np.where(self.fitted(rates), 0.0, self.longer)
        least = -np.inf if self.spacers is None else start - self.spacers
        most = np.inf if self.thread is None else start + self.thread
        return least, most

    def vetoes(self, rates: Number) -> dict[str, Flags]:
        """What does not fit, by name; the fitted spring does."""
        other, found = ~self.fitted(rates), {}
        if self.widest is not None and self.bore is not None:
            found["too wide"] = other & np.asarray(self.widest >= self.bore)
        if self.inside is not None and self.core is not None:
            found["too narrow"] = other & np.asarray(self.inside <= self.core)
        return found
