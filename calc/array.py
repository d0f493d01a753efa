"""The types that the physics takes: a float, or a numpy array of any shape that broadcasts with the others."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
Number = float | Array
Flags = NDArray[np.bool_]


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
