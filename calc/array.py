"""The types that the physics takes: a float, or a numpy array of any shape that broadcasts with the others."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
Number = float | Array
Flags = NDArray[np.bool_]
