"""Shims as built against those as found: one sentence a group, and all together."""

from __future__ import annotations

from collections.abc import Iterable

from calc.damping.shims import Group, stiffness
from calc.impossible import Impossible
from calc.job import Job
from calc.practice import Axle
from calc.report.quantity import plain_number, quantity
from calc.report.types import ShimChange

_SAYS_NOT = (
    "That says nothing of force: friction between shims, preload or dish, the ports' shape and which group lifts first are left "
    "out. A ring in between separates groups at small lift: not modelled."
)
_HALF = "Enter the shims both as found and as built, and the clamp washer that holds them."


def shim_change(job: Job, axle: Axle) -> ShimChange | None:
    """What a change of shims does to their stiffness.

    Parameters: job; axle.
    Returns: ShimChange; None where no shim is entered. Raises: nothing. Formula: see `calc.damping.shims`. Source: see there.
    Example: see `tests/unit/report/test_damping_shims.py`.
    """
    fields = [job.fields[f"{axle}.{key}"] for key in ("shims", "set_shims", "shim_clamp")]
    if not any(found.entered for found in fields[:2]):
        return None
    refused = next((found.problem.message for found in fields if found.problem), "")
    if refused:
        return ShimChange(None, "", (), refused)
    found, built = ([Group(*group) for group in field.groups] for field in fields[:2])
    clamp = fields[2].reading
    if not found or not built or clamp is None:
        return ShimChange(None, "", (), _HALF)
    try:
        ratio = stiffness(built, clamp.value) / stiffness(found, clamp.value)
    except Impossible as error:
        return ShimChange(None, "", (), f"{error.message} {error.way_out}")
    sizes = sorted({group.diameter for group in (*found, *built)}, reverse=True)
    groups = tuple(_sentence(size, _of(found, size), _of(built, size), clamp.value) for size in sizes)
    told = quantity(ratio, "×", "all shims, as built over as found", 2)
    words = f"All shims, bending together, are {told.text} times as stiff as they were. {_SAYS_NOT}"
    return ShimChange(told, words, groups, "")


def _of(groups: Iterable[Group], size: float) -> list[Group]:
    return [group for group in groups if group.same_kind(Group(1, size, 1.0))]


def _sentence(size: float, found: list[Group], built: list[Group], clamp: float) -> str:
    """By itself: a group that came or went has nothing that it could be compared with."""
    name = f"{plain_number(size)} mm"
    if not found:
        return f"{name}: {_named(built)}, new."
    if not built:
        return f"{name}: {_named(found)}, taken out."
    if [(one.count, one.thickness) for one in found] == [(one.count, one.thickness) for one in built]:
        return f"{name}: {_named(built)}, as before."
    ratio = quantity(stiffness(built, clamp) / stiffness(found, clamp), "×", "one group by itself", 2)
    return f"{name}: {_named(found)} became {_named(built)}, by themselves {ratio.text} times as stiff."


def _named(groups: list[Group]) -> str:
    return " and ".join(f"{plain_number(one.count)} of {plain_number(one.thickness)} mm" for one in groups)
