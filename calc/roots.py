"""A bracketed root of many functions at once. Ours because scipy is not shipped to the browser (20 MB for one routine)."""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from calc.array import Array, Number

_STEPS = 80


def find_root(function: Callable[[Array], Array], low: Number, high: Number, tolerance: float = 1e-10) -> Array:
    """Find x between low and high with function(x) = 0, element by element.

    Parameters: function of an array, monotone or at least of opposite sign at the ends; low, high: arrays that
    broadcast, in the unit of x; tolerance, absolute, in the unit of x.
    Returns: array of roots.
    Raises: ValueError when an element's ends have the same sign, or a value is not finite.
    Formula: Chandrupatla's method, inverse quadratic interpolation where it is safe, else bisection.
    Source: T. R. Chandrupatla, Advances in Engineering Software 28 (1997) 145-149; from memory, checked against scipy.
    Example:
        >>> round(float(find_root(lambda x: x * x - 2.0, 0.0, 2.0)), 9)
        1.414213562
    """
    a, b = (np.array(x, dtype=float) for x in np.broadcast_arrays(low, high))
    fa, fb = np.asarray(function(a), dtype=float), np.asarray(function(b), dtype=float)
    a, b, fa, fb = (np.array(x) for x in np.broadcast_arrays(a, b, fa, fb))
    if not np.all(np.isfinite(fa) & np.isfinite(fb)) or np.any(fa * fb > 0):
        raise ValueError("no sign change between the ends")
    c, fc, t = a.copy(), fa.copy(), np.full_like(a, 0.5)
    best = b
    for _ in range(_STEPS):
        x = a + t * (b - a)
        fx = np.asarray(function(x), dtype=float)
        same = np.sign(fx) == np.sign(fa)
        c, fc = np.where(same, a, b), np.where(same, fa, fb)
        b, fb = np.where(same, b, a), np.where(same, fb, fa)
        a, fa = x, fx
        best = np.where(np.abs(fa) < np.abs(fb), a, b)
        width = np.abs(b - a)
        if np.all((width <= 2 * tolerance) | (fa == 0)):
            return best
        t = _next_fraction(a, b, c, fa, fb, fc)
        edge = np.minimum(tolerance / np.where(width > 0, width, 1.0), 0.5)
        t = np.clip(t, edge, 1 - edge)
    return best


def _next_fraction(a: Array, b: Array, c: Array, fa: Array, fb: Array, fc: Array) -> Array:
    def ratio(over: Array, under: Array) -> Array:
        return over / np.where(under == 0, 1.0, under)

    xi, phi = ratio(a - b, c - b), ratio(fa - fb, fc - fb)
    quadratic = (phi**2 < xi) & ((1 - phi) ** 2 < 1 - xi) & (fb != fa) & (fc != fa) & (fc != fb)
    inverse = ratio(fa, fb - fa) * ratio(fc, fb - fc) + ratio(c - a, b - a) * ratio(fa, fc - fa) * ratio(fb, fc - fb)
    return np.where(quadratic, inverse, 0.5)
