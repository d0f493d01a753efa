"""Rear motion from linkage points, exactly: a shock on the swingarm, or a rod with a rocker between."""

from __future__ import annotations

from dataclasses import dataclass
from functools import cached_property
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from calc.array import Array, Number
from calc.impossible import Impossible
from calc.motion.ratio import travel_at

# A point of the side view as x + 1j z: turning it is one multiplication. No complex number leaves this module.
Point = NDArray[np.complex128]

_CHECKED_AT = 61  # places over the travel where the loop must close and the shock must shorten
_APART = 1.0  # mm; points nearer than this are one point


@dataclass(frozen=True, eq=False)
class Rocker:
    """A rod with a rocker: the rod turns the rocker, the rocker pushes the shock.

    Parameters: pivot of the rocker, rod_rocker and shock_rocker, where rod and shock meet it, rod_other, the rod's other
    end: Points [mm] from the swingarm pivot, x forward, z up; on_swingarm: True where the rocker's pivot is on the
    swingarm and the rod's other end on the frame, False for the reverse.
    """

    pivot: Point
    rod_rocker: Point
    shock_rocker: Point
    rod_other: Point
    on_swingarm: bool = False


@dataclass(frozen=True, eq=False)
class _Moving:
    """A point with its first two derivatives by the swingarm's angle [mm, mm/rad, mm/rad2]."""

    at: Point
    first: Point
    second: Point

    def minus(self, other: _Moving) -> _Moving:
        return _Moving(self.at - other.at, self.first - other.first, self.second - other.second)


@dataclass(frozen=True, eq=False)
class LinkageMotion:
    """A rear end known by its points, measured with the wheel at one height.

    Parameters: axle, shock_top (on the frame), Points [mm] from the swingarm pivot, x forward, z up; shock_foot, the shock's
    other end on the swingarm, read only where there is no rocker; measured_at [mm], wheel travel at which the points
    were taken; full_travel [mm], vertical at the axle; rocker, or None for a shock on the swingarm.
    Raises: Impossible where the loop cannot close, or the shock does not shorten, somewhere in the travel.
    Formula: the axle turns about the swingarm pivot; the rod's end on the rocker is where two circles meet, on the side
    where it was measured; stroke = shock length hanging - shock length; q and dq/dz by differentiating the closed loop.
    Source: plane kinematics; checked against another solver and the published motorcycle.
    Example:
        >>> m = LinkageMotion(np.array(-550 - 60j), np.array(-180 + 330j), np.array(-260 - 20j), 0.0, 120.0)
        >>> round(float(m.length(0.0)), 2), round(float(m.stroke(120.0)), 2), round(float(1 / m.ratio(60.0)), 3)
        (359.03, 55.32, 2.171)
    """

    axle: Point
    shock_top: Point
    shock_foot: Point
    measured_at: Number
    full_travel: Number
    rocker: Rocker | None = None

    def __post_init__(self) -> None:
        self._check_points()
        parts = np.linspace(0.0, 1.0, _CHECKED_AT)
        over = parts.reshape(-1, *(1,) * np.ndim(self.full_travel + 0.0 * self.axle.real)) * self.full_travel
        if np.any(self.length(over) < _APART):
            raise _broken("The shock's two ends meet somewhere in the travel.")
        ratio, travel = np.broadcast_arrays(self.ratio(over), over)
        if np.any(ratio <= 0):
            where = float(np.min(travel[ratio <= 0]))
            raise _broken(f"At {where:.0f} mm of wheel travel the shock does not shorten as the wheel rises.")

    def _check_points(self) -> None:
        pairs = [("The swingarm pivot and the axle", self.axle)]
        if self.rocker is not None:
            rod, pivot = self.rocker.rod_rocker, self.rocker.pivot
            pairs += [("The rocker's pivot and the rod", rod - pivot), ("The rod's two ends", self.rocker.rod_other - rod)]
            pairs += [("The rocker's pivot and the rod's other end", self.rocker.rod_other - pivot)]
        for names, apart in pairs:
            if np.any(np.abs(apart) < _APART):
                raise _broken(f"{names} are in one place.")

    def length(self, travel: Number) -> Number:
        """Shock length [mm], eye to eye, at a wheel travel."""
        return np.abs(self._found(travel)[1].at)

    @cached_property
    def _last(self) -> list[tuple[Number, Point, _Moving]]:
        """The last travel asked for and what was found there: stroke, ratio and slope are asked of one array in turn."""
        return []

    @cached_property
    def _hanging(self) -> Number:
        return self.length(0.0)

    def stroke(self, travel: Number) -> Number:
        """Shock stroke [mm] at a wheel travel."""
        return self._hanging - self.length(travel)

    def ratio(self, travel: Number) -> Number:
        """q = dx/dz [-], shock over wheel."""
        return -self._length_slopes(travel)[0]

    def slope(self, travel: Number) -> Number:
        """dq/dz [1/mm]."""
        return -self._length_slopes(travel)[1]

    def travel(self, stroke: Number) -> Number:
        """Wheel travel [mm] at a shock stroke within full travel."""
        return travel_at(self, self.full_travel, stroke)

    def points(self, travel: Number) -> dict[str, tuple[Number, Number]]:
        """Where every point is [mm], x forward and z up from the swingarm pivot, at a wheel travel."""
        turn = self._turn(travel)
        found = {"swingarm pivot": 0j * turn, "axle": self.axle * turn, "shock top": self.shock_top + 0.0 * turn}
        if self.rocker is None:
            found["shock foot"] = self.shock_foot * turn
        else:
            pivot, other, turned = self._loop(turn)
            found |= {
                "rocker pivot": pivot.at,
                "rod on rocker": pivot.at + (self.rocker.rod_rocker - self.rocker.pivot) * turned.at,
                "rod's other end": other.at,
                "shock on rocker": pivot.at + (self.rocker.shock_rocker - self.rocker.pivot) * turned.at,
            }
        return {name: (np.real(at), np.imag(at)) for name, at in found.items()}

    @property
    def bars(self) -> tuple[tuple[str, str], ...]:
        """Which of the points are joined: the swingarm first, the shock last."""
        if self.rocker is None:
            return ("swingarm pivot", "axle"), ("shock top", "shock foot")
        sides = ("rocker pivot", "rod on rocker", "shock on rocker", "rocker pivot")
        return (
            ("swingarm pivot", "axle"),
            *pairwise(sides),
            ("rod on rocker", "rod's other end"),
            ("shock top", "shock on rocker"),
        )

    def _turn(self, travel: Number) -> Point:
        """The swingarm's turn from where it was measured, as exp(1j angle), that puts the axle at a height."""
        arm, height = np.abs(self.axle), self.axle.imag + (travel - self.measured_at)
        if np.any(np.abs(height) >= arm):
            longest = float(np.min(arm))
            raise _broken(f"The axle cannot rise or fall so far on a swingarm of {longest:.0f} mm.")
        behind = np.sign(self.axle.real) * np.sqrt(arm**2 - height**2)
        return np.asarray((behind + 1j * height) / self.axle)

    def _on_swingarm(self, point: Point, turn: Point) -> _Moving:
        at = point * turn
        return _Moving(at, 1j * at, -at)

    def _found(self, travel: Number) -> tuple[Point, _Moving]:
        """The swingarm's turn, and the shock from its top to its other end; found once for one array."""
        if not self._last or self._last[0][0] is not travel:
            turn = self._turn(travel)
            self._last[:] = [(travel, turn, self._shock(turn))]
        return self._last[0][1:]

    def _shock(self, turn: Point) -> _Moving:
        top = _still(self.shock_top)
        if self.rocker is None:
            return self._on_swingarm(self.shock_foot, turn).minus(top)
        pivot, _, turned = self._loop(turn)
        arm = self.rocker.shock_rocker - self.rocker.pivot
        end = _Moving(pivot.at + arm * turned.at, pivot.first + arm * turned.first, pivot.second + arm * turned.second)
        return end.minus(top)

    def _loop(self, turn: Point) -> tuple[_Moving, _Moving, _Moving]:
        """Rocker pivot, the rod's other end, and the rocker's turn as exp(1j angle), each with its derivatives."""
        assert self.rocker is not None
        rocker = self.rocker
        swung, framed = (rocker.pivot, rocker.rod_other) if rocker.on_swingarm else (rocker.rod_other, rocker.pivot)
        moving, still = self._on_swingarm(swung, turn), _still(framed)
        pivot, other = (moving, still) if rocker.on_swingarm else (still, moving)
        arm = _where_circles_meet(rocker, other.at - pivot.at)
        return pivot, other, _rocker_turn(arm, rocker.rod_rocker - rocker.pivot, pivot.minus(other))

    def _length_slopes(self, travel: Number) -> tuple[Number, Number]:
        """First and second derivative of the shock's length by wheel travel [-, 1/mm]."""
        turn, shock = self._found(travel)
        length = np.abs(shock.at)
        by_angle = _dot(shock.at, shock.first) / length
        bend = (np.abs(shock.first) ** 2 + _dot(shock.at, shock.second) - by_angle**2) / length
        axle = self.axle * turn
        per_rise, per_rise_slope = 1.0 / axle.real, axle.imag / axle.real**3  # the swingarm's angle by the axle's height
        return by_angle * per_rise, bend * per_rise**2 + by_angle * per_rise_slope


def _where_circles_meet(rocker: Rocker, apart: Point) -> Point:
    """The rocker's arm to the rod, now: where the rod's circle meets the arm's, on the side where it was measured."""
    measured, arm = rocker.rod_other - rocker.pivot, rocker.rod_rocker - rocker.pivot
    side = np.sign((arm / measured).imag)
    if np.any(side == 0):
        raise _broken("Rod and rocker are in one line where they were measured: which way they fold is not known.")
    rod = np.abs(rocker.rod_other - rocker.rod_rocker)
    reach = np.abs(apart)
    cosine = (reach**2 + np.abs(arm) ** 2 - rod**2) / (2.0 * reach * np.abs(arm))
    if np.any(np.abs(cosine) >= 1.0):
        raise _broken("Rod and rocker cannot meet, or come into one line, somewhere in the travel.")
    return np.asarray(apart / reach * np.abs(arm) * (cosine + 1j * side * np.sqrt(1.0 - cosine**2)))


def _rocker_turn(arm: Point, measured: Point, base: _Moving) -> _Moving:
    """The rocker's turn: the rod's length, |base + arm|, stays. `base` runs from the rod's other end to the rocker's pivot."""
    rod, across = base.at + arm, 1j * arm
    lever = _dot(rod, across)
    if np.any(np.abs(lever) < 1e-9 * np.abs(rod) * np.abs(arm)):
        raise _broken("Rod and rocker come into one line somewhere in the travel.")
    first = -_dot(rod, base.first) / lever
    speed = np.abs(base.first + first * across) ** 2
    second = -(speed + _dot(rod, base.second - first**2 * arm)) / lever
    turn = arm / measured
    return _Moving(turn, 1j * first * turn, (1j * second - first**2) * turn)


def _still(point: Point) -> _Moving:
    return _Moving(point, 0.0 * point, 0.0 * point)


def _dot(a: Point, b: Point) -> Array:
    return np.asarray((a * np.conj(b)).real)


def _broken(message: str) -> Impossible:
    return Impossible("linkage", message, "Measure the points again, or enter a smaller wheel travel.", "rear.axle_x")
