"""Few readings: by how much what they scatter by is widened."""

from __future__ import annotations

# Student's t for 95 %, by degrees of freedom from 1: JCGM 100:2008, Table G.2; beyond it 1.96 + 2.5 / nu, within 0.01.
_T95 = (12.71, 4.30, 3.18, 2.78, 2.57, 2.45, 2.36, 2.31, 2.26, 2.23, 2.20, 2.18, 2.16, 2.14, 2.13, 2.12, 2.11, 2.10, 2.09, 2.09)


def widening(freedom: int) -> float:
    """Say by how much a standard uncertainty from few readings is widened, so that twice it holds 95 %.

    Parameters: freedom, degrees of freedom [-], 1 or more.
    Returns: factor [-].
    Raises: nothing.
    Formula: t95(freedom) / 2, not below 1.
    Source: JCGM 100:2008, G.3 and Table G.2.
    Example:
        >>> widening(2)
        2.15
    """
    t95 = _T95[freedom - 1] if freedom <= len(_T95) else 1.96 + 2.5 / freedom
    return max(t95 / 2.0, 1.0)
