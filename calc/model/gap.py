"""What is known of a leg's oil: the free area over it, and the gap, read or from the volume that was filled."""

from __future__ import annotations

import numpy as np

from calc.array import Number, some
from calc.gas.chamber import circle
from calc.impossible import Impossible
from calc.job import Job
from calc.leg.open import OpenLeg
from calc.model import fitted

Pieces = tuple[tuple[Number, Number], ...]


def free_area(job: Job, shut_now: bool, shut: bool) -> Pieces:
    """Free area from the tube's top downwards: one piece, or two in an upside-down leg.

    `shut_now`: a closed cartridge stands in the oil as it was measured; `shut`: it does in what is asked for.
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
    if job.choice("front.gap_state") == "extended":
        depth = depth + job.value("front.collapsed_stroke")
    return ((depth, outer), (0.0, deep))


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
    """True where the gap follows from the volume filled and a fill-to-brim reading."""
    paths = ("front.filled_left", "front.brim_volume")
    return job.choice("front.gap_from") == "volume filled" and all(job.known(path) for path in paths)


def gaps_read(job: Job) -> tuple[Number, Number]:
    """Gap [mm] of both legs as read, or as assumed."""
    return job.value("front.gap_left"), job.value("front.gap_right")


def gaps_found(job: Job, leg: OpenLeg) -> tuple[Number, Number]:
    """Gap [mm] of both legs from what the collapsed leg holds to the brim less what was filled."""
    left, right = (_from_volume(job, leg, side) for side in ("left", "right"))
    return left, right


def _from_volume(job: Job, leg: OpenLeg, side: str) -> Number:
    above = job.value("front.brim_volume") - job.value(f"front.filled_{side}") - job.value("front.filled_kept")
    if some(above <= 0):
        raise Impossible(
            "filled",
            f"The oil filled, with what stayed in, is {-np.min(above) / 1000:.0f} ml more than the collapsed leg holds.",
            "Check the volumes.",
            f"front.filled_{side}",
        )
    return leg.gap_of(above, fitted.rate(job, "front"))
