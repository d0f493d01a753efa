"""The types that the physics takes (a float, or an array that broadcasts), checks over them, and a bracketed root.

The root finder is ours because scipy is too large to ship to the browser.
"""

from __future__ import annotations

from collections.abc import Callable

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
    return bool(condition.any()) if isinstance(condition, np.ndarray) else bool(condition)


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
    return bool(condition.all()) if isinstance(condition, np.ndarray) else bool(condition)


def find_root(
    function: Callable[[Array], Array],
    low: Number,
    high: Number,
    tolerance: float = 1e-9,
    ends: tuple[Number, Number] | None = None,
) -> Array:
    """Find x between low and high with function(x) = 0, element by element.

    Parameters: function of an array [any unit], monotone and of opposite sign at the ends; low, high [unit of x], arrays
    that broadcast; tolerance [unit of x], absolute, above the spacing of floats there; ends, the function's values at
    low and high where they are known already.
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
    halved, before = np.zeros(np.shape(fb), dtype=bool), np.abs(fb)
    for step in range(1, _STEPS):
        x = np.where(halved, 0.5 * (a + b), _secant(a, b, fa, fb))
        # a step below the tolerance is lengthened to it, towards the other end: that is what closes the bracket
        x = np.where(np.abs(x - b) < tolerance, b + np.sign(a - b) * tolerance, x)
        x = np.where((fb == 0) | (np.abs(a - b) <= 2 * tolerance), b, x)
        fx = np.asarray(function(x), dtype=float)
        crossed = np.sign(fx) * np.sign(fb) < 0
        scale = 1.0 - np.maximum(np.minimum(fx / np.where(np.abs(fb) < 1e-300, 1.0, fb), 2.0), -2.0)
        stays = fa * np.where(scale > 0, scale, 0.5)
        a, fa = np.where(crossed, b, a), np.where(crossed, fb, stays)
        b, fb = x, fx
        if every((fb == 0) | (np.abs(a - b) <= 2 * tolerance)):
            return np.where(fb == 0, b, _secant(a, b, fa, fb))
        if step % 3:
            halved = np.zeros(np.shape(fb), dtype=bool)
        else:
            halved, before = np.abs(fb) > 0.125 * before, np.abs(fb)
    raise ArithmeticError("the root does not settle")


def _secant(a: Array, b: Array, fa: Array, fb: Array) -> Array:
    rise = fb - fa
    level = rise == 0
    return np.where(level, b, b - fb * (b - a) / np.where(level, 1.0, rise))
