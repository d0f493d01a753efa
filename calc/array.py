"""The types that the physics takes (a float, or an array that broadcasts), checks over them, and a bracketed root.

The root finder is ours because scipy is too large to ship to the browser.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
Number = float | Array
Flags = NDArray[np.bool_]

_STEPS = 400


def some(condition: object) -> bool:
    """Tell whether a condition holds anywhere: np.any for the checks inside the laws, where its wrapping costs more than the law.

    Parameters: condition, a truth value or an array of them.
    Returns: True where one is true.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example:
        >>> some(np.array([1.0, -1.0]) <= 0)
        True
    """
    return bool(np.count_nonzero(condition)) if isinstance(condition, np.ndarray) else bool(condition)


def every(condition: object) -> bool:
    """Tell whether a condition holds everywhere: np.all, for the reason of `some`.

    Parameters: condition, a truth value or an array of them.
    Returns: True where all are true.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example:
        >>> every(np.array([1.0, -1.0]) <= 0)
        False
    """
    return bool(np.count_nonzero(condition) == np.size(condition)) if isinstance(condition, np.ndarray) else bool(condition)


def added(parts: Iterable[Number], like: Number) -> Number:
    """Add parts up: sum, without its start, which costs as much as a part; of none, zeros.

    Parameters: parts [any unit], that broadcast; like, whose shape the zeros of no parts have.
    Returns: their sum [that unit].
    Raises: nothing.
    Formula: none.
    Source: none.
    Example:
        >>> added((1.0, 2.0), 0.0), added((), np.array([5.0])).tolist()
        (3.0, [0.0])
    """
    total = None
    for part in parts:
        total = part if total is None else total + part
    return 0.0 * np.asarray(like) if total is None else total


def find_root(
    function: Callable[[Array], Array],
    low: Number,
    high: Number,
    tolerance: float = 1e-9,
    ends: tuple[Number, Number] | None = None,
) -> Array:
    """Find x between low and high with function(x) = 0, element by element.

    Parameters: function of an array [any unit], monotone and of opposite sign at the ends; low, high [unit of x], arrays
    that broadcast; tolerance [unit of x], absolute, above the spacing of floats there: half of the bracket in which the last
    secant is drawn, which, where the function has no corner in it, comes nearer by its square; ends, the function's values at low
    and high where they are known already.
    Returns: array of roots [unit of x].
    Raises: ValueError when an element's ends have the same sign or a value is not finite; ArithmeticError when the
    bracket does not close.
    Formula: regula falsi with Anderson and Bjorck's scaling of the end that stays; the bracket is halved wherever three steps
    have not brought the function down to an eighth.
    Source: N. Anderson and A. Bjorck, BIT 13 (1973) 253-264; from memory, checked against scipy.
    Example:
        >>> round(float(find_root(lambda x: x * x - 2.0, 0.0, 2.0)), 9)
        1.414213562
    """
    known = (function(np.asarray(low, dtype=float)), function(np.asarray(high, dtype=float))) if ends is None else ends
    a, b, fa, fb = (np.array(x, dtype=float) for x in np.broadcast_arrays(low, high, *known))
    if not every(np.isfinite(fa) & np.isfinite(fb)) or some(np.sign(fa) * np.sign(fb) > 0):
        raise ValueError("no sign change between the ends")
    closed, slow, before = _closed(a, b, fb, tolerance), None, np.abs(fb)
    at_a = fa  # fa is scaled while a stays; the last secant takes what the function is there
    for step in range(1, _STEPS):
        x = _secant(a, b, fa, fb)
        if slow is not None:
            x = np.where(slow, 0.5 * (a + b), x)
        # a step below the tolerance is lengthened to it, towards the other end: that is what closes the bracket
        short = np.abs(x - b) < tolerance
        if some(short):
            x = np.where(short, b + np.sign(a - b) * tolerance, x)
        if some(closed):
            x = np.where(closed, b, x)
        fx = np.asarray(function(x), dtype=float)
        crossed = np.sign(fx) * np.sign(fb) < 0
        scale = 1.0 - np.maximum(np.minimum(fx / np.where(np.abs(fb) < 1e-300, 1.0, fb), 2.0), -2.0)
        at_a, stays = np.where(crossed, fb, at_a), fa * np.where(scale > 0, scale, 0.5)
        a, fa = np.where(crossed, b, a), np.where(crossed, fb, stays)
        b, fb = x, fx
        closed = _closed(a, b, fb, tolerance)
        if every(closed):
            return np.where(fb == 0, b, _secant(a, b, at_a, fb))
        slow = None
        if step % 3 == 0:
            slow, before = np.abs(fb) > 0.125 * before, np.abs(fb)
    raise ArithmeticError("the root does not settle")


def _closed(a: Array, b: Array, fb: Array, tolerance: float) -> Flags:
    return np.asarray((fb == 0) | (np.abs(a - b) <= 2 * tolerance))


def _secant(a: Array, b: Array, fa: Array, fb: Array) -> Array:
    rise = fb - fa
    level = rise == 0
    if some(level):
        return np.where(level, b, b - fb * (b - a) / np.where(level, 1.0, rise))
    return np.asarray(b - fb * (b - a) / rise)
