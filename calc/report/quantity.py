"""Worked-out quantities, and numbers as text: rounded here once, for page, sentences and command line alike."""

from __future__ import annotations

import math

from calc.quantities.entry import convert
from calc.report.types import Quantity

# Of the last digit in a +/-: a rate known to worse than 5 N/mm is told in whole ones. Common practice, no source.
_TOO_FINE = 50.0


def quantity(value: object, unit: str, case: str, decimals: int, internal: str | None = None) -> Quantity:
    """A worked-out result.

    Parameters: value, scalar in `internal` (or already in `unit`); unit shown; case, which load and process it holds for;
    decimals that the practice shows.
    Returns: a Quantity with no +/- yet, rounded in its text.
    Raises: ArithmeticError for a value that is not finite, so that none reaches a screen.
    Formula: unit conversion.
    Source: none.
    Example:
        >>> quantity(41.7, "ml", "", 0).text
        '42'
    """
    shown = _shown(value, unit, case, internal)
    return Quantity(shown, unit, case, "worked out", None, decimals, number_text(shown, decimals), "")


def spring_rate(value: object, case: str) -> Quantity:
    """A spring's rate [N/mm], as `quantity`, written as the trade writes it."""
    shown = _shown(value, "N/mm", case, None)
    return Quantity(shown, "N/mm", case, "worked out", None, 1, rate_text(shown), "")


def known_rate(value: object, half: float, case: str) -> Quantity:
    """A spring's rate [N/mm] that readings tell to `half` either way, written no finer than that is worth."""
    rate = spring_rate(value, case)
    places = decimals_worth(half, len(rate.text.partition(".")[2]))
    return with_half(Quantity(rate.value, rate.unit, case, rate.origin, None, places, number_text(rate.value, places), ""), half)


def decimals_worth(half: float, decimals: int) -> int:
    """How many of the decimals that the practice shows a +/- leaves: a digit of which fifty fit into it says nothing.

    Parameters: half, 95 % half-width [any unit]; decimals, what the practice shows.
    Returns: `decimals`, or fewer.
    Raises: nothing.
    Formula: 10^-decimals >= half / 50, or none.
    Source: none.
    Example:
        >>> decimals_worth(15.7, 1), decimals_worth(4.1, 1)
        (0, 1)
    """
    while decimals and _TOO_FINE * 10.0**-decimals < half:
        decimals -= 1
    return decimals


def _shown(value: object, unit: str, case: str, internal: str | None) -> float:
    number = float(value)  # type: ignore[arg-type]
    if not math.isfinite(number):
        raise ArithmeticError(f"a result in {unit or 'plain numbers'} ({case}) is not finite")
    return float(f"{convert(number, internal, unit) if internal else number:.12g}") + 0.0


def with_half(figure: Quantity, half: float | None) -> Quantity:
    """A result with its +/- [its unit], a 95 % half-width; None for one that no draws tell."""
    if half is None:
        return figure
    rounded = float(f"{half:.3g}")
    text = half_text(rounded, len(figure.text.partition(".")[2]))
    return Quantity(figure.value, figure.unit, figure.case, figure.origin, rounded, figure.decimals, figure.text, text)


def half_text(half: float, decimals: int) -> str:
    """A +/- to the decimals that its value shows; never a +/- of 0."""
    text = number_text(half, decimals)
    if float(text) or not half:
        return f"±{text}"
    return f"±{half:.{-math.floor(math.log10(float(f'{half:.1g}')))}f}"


def spread_text(half: float | None) -> str:
    """The +/- of a reading, to two figures as is the custom; empty where it has none."""
    return f"±{plain_number(float(f'{half:.2g}'))}" if half else ""


def plain_number(value: float) -> str:
    """A number to six figures at most, never as a power of ten."""
    text = f"{value:.6g}"
    if "e" in text:
        text = number_text(float(text), max(5 - math.floor(math.log10(abs(value))), 0))
        text = text.rstrip("0").rstrip(".") if "." in text else text
    return text.replace("-", "−")


def figure_text(figure: Quantity) -> str:
    """A quantity as text with its unit; a minus is a real minus, and there is no minus zero."""
    return f"{figure.text} {figure.unit}".rstrip()


def size_text(figure: Quantity) -> str:
    """The number of a quantity without its sign."""
    return figure.text.lstrip("−")


def banded_text(figure: Quantity, size: str | None = None) -> str:
    """A number, or its `size`, with its +/- where it has one."""
    return f"{figure.text if size is None else size} {figure.plus_minus_text}".strip()


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
