"""Results as plain data: every quantity with value, unit, case, origin and +/-."""

from __future__ import annotations

import math
from typing import Any

from calc.quantities.entry import convert

Data = dict[str, Any]


def quantity(value: object, unit: str, case: str, decimals: int, internal: str | None = None) -> Data:
    """A worked-out result.

    Parameters: value, scalar in `internal` (or already in `unit`); unit shown; case, which load and process it holds for;
    decimals that the practice shows.
    Returns: value, unit, case, origin "worked out", plus_minus_95 None (no draws yet), decimals.
    Raises: ArithmeticError for a value that is not finite, so that none reaches a screen.
    Formula: unit conversion.
    Source: none.
    Example:
        >>> quantity(41.7, "ml", "", 0)["value"]
        41.7
    """
    number = float(value)  # type: ignore[arg-type]
    if not math.isfinite(number):
        raise ArithmeticError(f"a result in {unit or 'plain numbers'} ({case}) is not finite")
    shown = convert(number, internal, unit) if internal else number
    return {
        "value": float(f"{shown:.12g}") + 0.0,
        "unit": unit,
        "case": case,
        "origin": "worked out",
        "plus_minus_95": None,
        "decimals": decimals,
    }


def told(figure: Data) -> str:
    """A quantity as text, rounded as the practice shows it; a minus is a real minus, and there is no minus zero."""
    text = number_text(figure["value"], figure["decimals"])
    return f"{text} {figure['unit']}".rstrip()


def with_half(figure: Data, half: float | None) -> Data:
    """A result with its +/- [its unit], a 95 % half-width; None for one that no draws tell."""
    return figure if half is None else figure | {"plus_minus_95": float(f"{half:.3g}")}


def plus_minus_text(figure: Data) -> str:
    """The +/- of a result, to the decimals that its value shows; empty where it has none. Never a +/- of 0."""
    half = figure["plus_minus_95"]
    if half is None:
        return ""
    text = number_text(half, figure["decimals"])
    return f"±{text}" if float(text) else f"±{float(f'{half:.1g}'):g}"


def number_text(value: float, decimals: int) -> str:
    """A number as text with a fixed number of decimals."""
    text = f"{value:.{decimals}f}"
    if float(text) == 0:
        text = text.lstrip("-")
    return text.replace("-", "−")


def rate_text(value: float) -> str:
    """A spring rate as the trade writes it: at least one decimal for forks, none for a whole shock rate."""
    if value >= 20:
        return f"{value:.1f}".removesuffix(".0")
    text = f"{value:.2f}"
    return text.removesuffix("0")
