"""What is known of a leg's oil: the free area over it, and the gap, read, assumed, or from the volume that was filled."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np

from calc.array import Number, some
from calc.gas.chamber import circle
from calc.impossible import Impossible
from calc.job import Job
from calc.leg.open import OpenLeg
from calc.model import fitted

Pieces = tuple[tuple[Number, Number], ...]
LegOf = Callable[[], OpenLeg]  # the leg of a gap, made only where it is asked for


def free_area(job: Job, shut_now: bool, shut: bool) -> Pieces:
    """Free area of a collapsed leg from the tube's top downwards, a damper rod in it not counted (`rod_area`).

    Parameters: job; shut_now, whether a closed cartridge stands in the oil as it was measured; shut, whether it does in
    what is asked for.
    Returns: pieces of (length [mm], area [mm2]): one, or two in an upside-down leg.
    Raises: Impossible where diameters leave no area, or a reading that it follows from is not entered.
    Formula: raised: volume / rise; brim: (poured - outer bore x depth) / what is left of the gap; diameters: bore, upside-down
    plus outer bore - seal; a closed cartridge takes its own circle.
    Source: geometry.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> [(float(deep), round(float(area))) for deep, area in free_area(load(jobs()["enduro"]), False, False)]
        [(32.0, 2011), (0.0, 1667)]
    """
    seal = job.value("front.seal_diameter")
    upside_down = job.choice("front.layout") == "upside-down"
    outer = circle(job.value("front.outer_bore")) if upside_down else 0.0
    if upside_down and some(outer <= circle(seal)):
        raise Impossible("bore", "The outer tube's bore is not above the seal diameter.", "Measure both again.", "front.outer_bore")
    depth = job.value("front.outer_depth") if upside_down else 0.0
    by = job.choice("front.area_by")
    body = circle(job.value("front.cartridge_body")) if shut or shut_now else 0.0
    if by == "raised":
        deep = _raised(job)
    elif by == "brim":
        deep = _brimmed(job, depth, outer)
    else:
        bore = seal - 2.0 * job.value("front.wall")
        if some(bore <= 0):
            raise Impossible("wall", "The chrome tube's wall leaves no bore.", "Measure wall and diameter again.", "front.wall")
        deep = circle(bore) + (outer - circle(seal) if upside_down else 0.0)
        shut_now = False
    if shut != shut_now:
        deep = deep + (body if shut_now else -body)
    if some(deep <= 0):
        raise Impossible("area", "The cartridge leaves no free area around it.", "Measure both again.", "front.cartridge_body")
    if not upside_down:
        return ((0.0, deep),)
    return ((depth, outer), (0.0, deep))


def rod_area(job: Job, shut: bool) -> Number:
    """Area that a damper rod takes of a free area known from diameters.

    Parameters: job; shut, whether a closed cartridge stands in the oil: the rod is then inside it.
    Returns: area [mm2]; 0 where oil that was poured in met the rod already.
    Raises: nothing.
    Formula: pi d^2 / 4.
    Source: geometry.
    Example:
        >>> from calc.job import load
        >>> bare = {"format": "stanchion-job", "version": 1, "bike": {"use": "enduro"}}
        >>> round(float(rod_area(load(bare), False)), 1), rod_area(load(bare), True)
        (113.1, 0.0)
    """
    return 0.0 if shut or job.choice("front.area_by") != "diameters" else circle(job.value("front.damper_rod"))


def _raised(job: Job) -> Number:
    """Free area [mm2] from a known volume poured in."""
    if not job.known("front.raised_height"):
        raise Impossible(
            "raised", "How far the oil rose is not entered.", "Pour and read the rise, or choose diameters.", "front.raised_height"
        )
    return job.value("front.raised_volume") / job.value("front.raised_height")


def _brimmed(job: Job, depth: Number, outer: Number) -> Number:
    """Free area [mm2] below the outer bore alone, from the oil that filled the leg to the brim from a known gap."""
    gap, poured = fitted.needed(job, "front.brim_gap"), fitted.needed(job, "front.brim_poured")
    below, left = gap - depth, poured - outer * depth
    if some(below <= 0) or some(left <= 0):
        raise Impossible(
            "brim",
            f"{np.min(poured) / 1000:.0f} ml from a gap of {np.max(gap):.0f} mm leaves nothing below the outer bore.",
            "Start from a larger gap, or measure the outer bore and its depth again.",
            "front.brim_poured",
        )
    return left / below


def by_volume(job: Job) -> bool:
    """Tell whether the gap follows from the volume filled.

    Parameters: job.
    Returns: True where both the volume and a fill-to-brim reading are known.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> by_volume(load(jobs()["enduro"]))
        False
    """
    paths = ("front.filled_left", "front.brim_volume")
    return job.choice("front.gap_from") == "volume filled" and all(job.known(path) for path in paths)


def own_gap(job: Job, path: str, leg: LegOf, rate: Number | None) -> Number:
    """A gap in the convention in which the user reads theirs: one that nobody entered is the trade's, read its way.

    Parameters: job; path of the gap's field; leg that it belongs to, in the user's convention; rate [N/mm] of the spring in it,
    None for none.
    Returns: gap [mm].
    Raises: Impossible where the trade's gap cannot be read in the user's convention.
    Formula: the same gas at full extension; the trade reads the gap collapsed, with spring and spacer out.
    Source: common practice, no source.
    Example: see `tests/unit/leg/test_gap_conventions.py`.
    """
    gap = job.value(path)
    if not _of_the_trade(job, path) or (job.choice("front.gap_read"), job.choice("front.gap_state")) == ("out", "collapsed"):
        return gap
    own = leg()
    try:
        return replace(own, spring_in=False, extended=False).gap_as(own, rate, gap)
    except Impossible as error:
        words = f"A gap of {np.min(gap):.0f} mm, read collapsed with the spring out, cannot be read your way."
        raise Impossible(error.code, words, "Enter the gap as you read it.", path) from error


def _of_the_trade(job: Job, path: str) -> bool:
    """True for a gap that was not entered, nor follows one that was."""
    default = job.fields[path].field.default
    follows = default.follow if default else None
    return not job.entered(path) and (follows is None or _of_the_trade(job, follows))


def gap_filled(job: Job, leg: OpenLeg, side: str, rate: Number | None) -> Number:
    """Gap of a leg from what it holds to the brim, collapsed, less what was filled.

    Parameters: job; leg, in the user's convention; side, "left" or "right"; rate [N/mm] of the spring in it, None for none.
    Returns: gap [mm].
    Raises: Impossible where more was filled than the leg holds, or so little that no tube is deep enough.
    Formula: gas collapsed = brim - filled - kept; read extended, what the stroke draws out joins it.
    Source: geometry.
    Example: see `tests/unit/leg/test_leg_gap.py`.
    """
    above = job.value("front.brim_volume") - job.value(f"front.filled_{side}") - job.value("front.filled_kept")
    if some(above <= 0):
        raise Impossible(
            "filled",
            f"The oil filled, with what stayed in, is {-np.min(above) / 1000:.0f} ml more than the collapsed leg holds.",
            "Check the volumes.",
            f"front.filled_{side}",
        )
    return leg.gap_of(above, rate)
