"""What cannot be built, what was wanted and is not reached, and the criteria: each in words with its numbers, and its way out."""

from __future__ import annotations

from typing import Literal

import numpy as np

from calc.impossible import decimals_apart
from calc.report.quantity import number_text
from calc.report.types import Criterion, Reason
from calc.sizing.air_pressure import SEARCHED
from calc.sizing.criteria import Criterion as Judged

Numbers = dict[str, float | None]

_TOO_STIFF = "Want less rider sag, or offer softer springs."
_TOO_SOFT = "Want more rider sag, or offer stiffer springs."
WAY_OUT = {
    "coil bind": "Offer a spring with more room: longer, or with fewer coils.",
    "second coil bind": "Fit a second spring with more room: longer, with fewer coils, or joining later.",
    "second closes early": "Check where the second spring closes, and its two lengths.",
    "too wide": "Offer a narrower spring.",
    "too narrow": "Offer a wider spring.",
    "no pressure": "Check the air piston, the volumes, the coil and the weights.",
    "pressure above": "Want more rider sag, or check the maximum pressure.",
    "pressure most": "Want more rider sag, or check the maximum pressure.",
    "oil out": "Ask less of the end of travel, or set it by the oil height.",
    "preload below": _TOO_STIFF,
    "preload above": _TOO_SOFT,
    "preload low": "Check that the spring stays seated, and enter the least preload.",
    "preload high": "Check what spacers and adjuster give, and enter the most preload.",
    "gap below": "Measure how far the oil may rise, or ask less of the end of travel.",
    "gap above": "Measure how low the oil may stand, or ask more of the end of travel.",
    "end unreachable": "Ask for what can be reached, or change the springs.",
    "sag unreachable": "Check the top-out spring's rate, or want more rider sag.",
}

WORDS = {
    "coil bind": "leaves {bind} mm before the coils touch at full travel; {bind_margin} mm are wanted",
    "second coil bind": "leaves {second_bind} mm before the second spring's coils touch at full travel; {bind_margin} mm are wanted",
    "second closes early": "closes the second spring's coils {second_short} mm too early: from there on these figures do not hold",
    "too wide": "does not fit: {outside} mm wide with its coils closed, in a bore of {bore} mm",
    "too narrow": "does not fit: {inside} mm inside, over {core} mm",
    "no pressure": f"no pressure from {SEARCHED} gives {{wanted}} mm of rider sag",
    "pressure above": "needs {pressure} bar, more than the {pressure_max} bar it takes",
    "pressure most": "even at {pressure} bar, the most it takes, it sags {rider_sag} mm, where {wanted} are wanted",
    "oil out": "needs {oil_out} ml out of the main chamber, and {oil_in} ml are in",
    "preload below": "even with {preload} mm preload it sags only {rider_sag} of the {wanted} mm wanted",
    "preload above": "even with {preload} mm preload it sags {rider_sag} mm, where {wanted} are wanted",
    "preload low": "{preload} mm preload is less than the {preload_min} mm assumed to be the least",
    "preload high": "{preload} mm preload is more than the {preload_max} mm assumed to be the most",
    "gap below": "would need a gap of {gap_exact} mm; {gap} is the smallest allowed",
    "gap above": "would need a gap of {gap_exact} mm; {gap} is the largest allowed",
    "end unreachable": "reaches {end} × rider load at full travel, whatever is set for it; {end_wanted} is wanted",
    "energy unreachable": "takes up {energy} J to full travel, whatever is set for it; {energy_wanted} J is wanted",
    "sag unreachable": "has {rider_sag} mm rider sag at any preload, since the top-out spring still acts there; {wanted} is wanted",
}

# Numbers told to a tenth; the others to the whole.
_TENTHS = {"outside", "bore", "inside", "core", "pressure", "pressure_max", "end", "end_wanted"}
# The two numbers that a sentence sets against each other: told apart in its words too.
_AGAINST = {
    "coil bind": ("bind", "bind_margin"),
    "second coil bind": ("second_bind", "bind_margin"),
    "too wide": ("outside", "bore"),
    "too narrow": ("inside", "core"),
    "pressure above": ("pressure", "pressure_max"),
    "pressure most": ("rider_sag", "wanted"),
    "oil out": ("oil_out", "oil_in"),
    "preload below": ("rider_sag", "wanted"),
    "preload above": ("rider_sag", "wanted"),
    "preload low": ("preload", "preload_min"),
    "preload high": ("preload", "preload_max"),
    "gap below": ("gap_exact", "gap"),
    "gap above": ("gap_exact", "gap"),
    "end unreachable": ("end", "end_wanted"),
    "energy unreachable": ("energy", "energy_wanted"),
    "sag unreachable": ("rider_sag", "wanted"),
}


def reason(name: str, numbers: Numbers) -> Reason:
    """One reason: its code, its words with their numbers, and what would mend it."""
    return Reason(name, reason_words(name, numbers), WAY_OUT[name])


def reason_words(name: str, numbers: Numbers) -> str:
    """In words with its numbers, rounded no further than lets what is beyond a limit read as beyond it."""
    known = {key: value for key, value in numbers.items() if value is not None}
    if name == "end unreachable" and "energy_wanted" in known:
        name = "energy unreachable"
    one, other = _AGAINST.get(name, ("", ""))
    decimals = decimals_apart(known.get(one, 0.0), known.get(other, 0.0), 1 if one in _TENTHS else 0)
    shown = {
        key: number_text(value, max(decimals, 1) if key in _TENTHS else decimals if key in (one, other) else 0)
        for key, value in known.items()
    }
    return WORDS[name].format(**shown)


def criterion(name: str, judged: Judged, index: int, wanted: float) -> Criterion:
    """One result against its window: inside, at the edge, or outside, with its figures."""
    value, low, high = (float(_at(part, index)) for part in (judged.value, judged.low, judged.high))
    state: Literal["inside", "at the edge", "outside"]
    state = "outside" if _at(judged.outside, index) else "at the edge" if _at(judged.at_edge, index) else "inside"
    return Criterion(name, state, criterion_words(name, value, low, high, wanted))


def _at(part: object, index: int) -> float:
    array = np.asarray(part)
    return float(array if array.ndim == 0 else array[index])


def criterion_words(name: str, value: float, low: float, high: float, wanted: float) -> str:
    """A result and what is wanted or usual, as figures."""
    if name == "rider sag":
        return f"rider sag {_apart(value, wanted)} mm, {number_text(wanted, 0)} wanted"
    if name == "free sag":
        edge = low if value < low else high
        text = "none, topped out" if value <= 0 else f"{_apart(value, edge)} mm"
        return f"free sag {text}, usual {_window(low, high)}"
    if low <= 0:
        return f"force at full travel {number_text(value, 1)} × rider load"
    places = decimals_apart(value, low, 1)
    return f"force at full travel {number_text(value, places)} × rider load, at least {number_text(low, places)} wanted"


def _window(low: float, high: float) -> str:
    """A window; one that is open at an end names the other."""
    if np.isinf(low):
        return f"up to {number_text(high, 0)}"
    return f"from {number_text(low, 0)}" if np.isinf(high) else f"{number_text(low, 0)}-{number_text(high, 0)}"


def _apart(value: float, edge: float) -> str:
    return number_text(value, decimals_apart(value, edge, 0) if abs(value - edge) > 0.05 else 0)
