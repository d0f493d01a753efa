"""What bars a candidate, in words with its numbers, and what would mend it."""

from __future__ import annotations

import math
from dataclasses import dataclass

from calc.impossible import decimals_apart
from calc.report.quantity import number_text
from calc.report.types import Reason
from calc.sizing.air_pressure import SEARCHED

# What would reach a target that no spring on offer reaches, by what stops the nearest one.
_TOO_STIFF = "Want less rider sag, or offer softer springs."
_TOO_SOFT = "Want more rider sag, allow more preload, or offer stiffer springs."
WAY_OUT = {
    "preload below": _TOO_STIFF,
    "preload above": _TOO_SOFT,
    "free sag below": _TOO_SOFT,
    "free sag above": _TOO_STIFF,
    "gap below": "Ask less of the end of travel, or offer stiffer springs.",
    "gap above": "Ask more of the end of travel, offer softer springs, or raise the largest gap if the damper stays covered.",
    "coil bind": "Offer a spring with more room: longer, or with fewer coils.",
    "second coil bind": "Fit a second spring with more room: longer, with fewer coils, or joining later.",
    "second closes early": "Check where the second spring closes, and its two lengths.",
    "too wide": "Offer a narrower spring.",
    "too narrow": "Offer a wider spring.",
    "thread": "Offer a longer spring.",
    "spacers": "Offer a shorter spring.",
    "no pressure": "Check the air piston, the volumes, the coil and the weights.",
    "pressure above": "Want more rider sag, or check the most pressure that it takes.",
    "oil out": "Ask more of the end of travel, or set it by the oil height.",
    "sag unreachable": "Check the top-out spring's rate, or want more rider sag.",
}

# The same where an air spring carries the end: there are no other springs to offer.
AIR_WAY_OUT = {
    "gap below": "Ask less of the end of travel, or set it by oil in the main chamber.",
    "gap above": "Ask more of the end of travel, or raise the largest gap if the damper stays covered.",
    "sag off": "Take the pressure nearest to the sag wanted.",
    "coil bind": "Take the coil out, or fit one with more room.",
}
CONTROLS = {"gap": "gap", "oil": "amount of oil in the main chamber", "second": "pressure of the second volume"}

VETO_WORDS = {
    "preload below": "needs {preload} mm preload, below the {preload_min} mm that can be built: too stiff for this sag",
    "preload above": "needs {preload} mm preload, above the {preload_max} mm that can be built: too soft for this sag",
    "sag off": "leaves {rider_sag} mm rider sag, where {wanted} mm is wanted",
    "gap below": "needs gap {gap} mm, below the smallest of {gap_min} mm",
    "gap above": "needs gap {gap} mm, above the largest of {gap_max} mm",
    "coil bind": "leaves {bind} mm before the coils touch at full travel, under the {bind_margin} mm margin",
    "second coil bind": "leaves {second_bind} mm before the second spring's coils touch at full travel, under the {bind_margin} mm margin",
    "second closes early": "closes the second spring's coils {second_short} mm before it is said to close: the rates told here do not hold beyond",
    "too wide": "does not fit: {outside} mm wide with its coils closed, and its bore is {bore} mm",
    "too narrow": "does not fit: {inside} mm inside, and what stands in it is {core} mm",
    "thread": "does not fit: the collar must go {further} mm further in, and {thread} mm of thread are left",
    "spacers": "does not fit: spacers must be {shorter} mm shorter, and {spacers} mm are in",
    "no pressure": f"An air spring is set by its pressure, and none from {SEARCHED} gives {{wanted}} mm of rider sag here; what is found is worked out in full",
    "pressure above": "needs {pressure} bar, above the {pressure_max} bar that it takes",
    "oil out": "needs {oil_out} ml out of the main chamber, and {oil_in} ml are in",
    "sag unreachable": "meets the rider sag wanted at no preload: the top-out spring still acts there",
    "free sag below": "free sag {free_sag} mm, under the window of {free_low}-{free_high}: too soft, preload is doing the work",
    "free sag above": "free sag {free_sag} mm, over the window of {free_low}-{free_high}: too stiff for this sag",
}


# Numbers told to a tenth; those of another veto to the whole.
_TENTHS = {"outside", "bore", "inside", "core", "pressure", "pressure_max"}
# The two numbers that a veto sets against each other: told apart in its words too.
_AGAINST = {
    "preload below": ("preload", "preload_min"),
    "preload above": ("preload", "preload_max"),
    "gap below": ("gap", "gap_min"),
    "gap above": ("gap", "gap_max"),
    "coil bind": ("bind", "bind_margin"),
    "second coil bind": ("second_bind", "bind_margin"),
    "too wide": ("outside", "bore"),
    "too narrow": ("inside", "core"),
    "thread": ("further", "thread"),
    "spacers": ("shorter", "spacers"),
    "pressure above": ("pressure", "pressure_max"),
    "oil out": ("oil_out", "oil_in"),
    "free sag below": ("free_sag", "free_low"),
    "free sag above": ("free_sag", "free_high"),
}


def reason(name: str, numbers: dict[str, float | None], control: str, end: EndWanted | None) -> Reason:
    """One veto: its code, its words with their numbers, and what would mend it.

    `control` is what meets the end-of-travel target: "gap", or that of an air spring, where there are no springs to offer.
    """
    air = numbers["pressure"] is not None
    if name == "end unreachable" and end is not None:
        return Reason(name, end.words(CONTROLS[control]), end.way_out(air))
    ways = WAY_OUT | (AIR_WAY_OUT if air else {})
    return Reason(name, veto_words(name, numbers), ways[name])


def veto_words(name: str, numbers: dict[str, float | None]) -> str:
    """One veto in words with its numbers, rounded no further than lets what is beyond a limit read as beyond it."""
    known = {key: value for key, value in numbers.items() if value is not None}
    one, other = _AGAINST.get(name, ("", ""))
    decimals = decimals_apart(known.get(one, 0.0), known.get(other, 0.0), 1 if one in _TENTHS else 0)
    shown = {key: number_text(value, 1 if key in _TENTHS and decimals == 0 else decimals) for key, value in known.items()}
    return VETO_WORDS[name].format(**shown)


@dataclass(frozen=True)
class EndWanted:
    """What is wanted of the end of the travel, and the nearest that a candidate comes, whatever is set for it.

    Parameters: unit, with the space before it; decimals that the practice shows; wanted and reached [that unit].
    """

    unit: str
    decimals: int
    wanted: float
    reached: float

    def words(self, control: str) -> str:
        """What stops it."""
        decimals = decimals_apart(self.reached, self.wanted, self.decimals)
        reached, wanted = (f"{number_text(value, decimals)}{self.unit}" for value in (self.reached, self.wanted))
        return f"comes no nearer than {reached} to the {wanted} wanted at the end of the travel, at any {control}"

    def way_out(self, air: bool) -> str:
        """Which change would reach it; the number is rounded to what can be reached."""
        step, stiff = 10.0**-self.decimals, self.reached > self.wanted
        ask = number_text((math.ceil if stiff else math.floor)(self.reached / step) * step, self.decimals)
        other = "set it another way" if air else f"offer {'softer' if stiff else 'stiffer'} springs"
        return f"Ask for {ask}{self.unit} or {'more' if stiff else 'less'} there, or {other}."
