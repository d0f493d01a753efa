"""The dampers of an end as their readings describe them."""

from __future__ import annotations

from dataclasses import dataclass

from calc.array import Number
from calc.damping.flow import Sizes
from calc.gas.chamber import circle
from calc.impossible import Impossible
from calc.job import Job
from calc.practice import Axle

DENSITY = 870.0  # kg/m3, a mineral oil where the tin's is not entered; Rabie's example oils lie about there, from memory


@dataclass(frozen=True, eq=False)
class Damper:
    """The dampers of an end, all alike.

    Parameters: sizes; count [-], how many work on compression, and as many on rebound; speed [mm/s] of the shaft; base_drop
    [MPa] of the base valve at that speed, None where nobody entered it; vapour [MPa, absolute]; ports [mm2], area of all
    compression ports in a piston, None where they are not entered; density [kg/m3] of the oil.
    Formula: none.
    Source: none.
    """

    sizes: Sizes
    count: int
    speed: Number
    base_drop: Number | None
    vapour: Number
    ports: Number | None
    density: Number


def damper(job: Job, axle: Axle) -> Damper:
    """Read the dampers of an end.

    Parameters: job; axle.
    Returns: Damper.
    Raises: Impossible naming the field where the rod is not thinner than the piston, or one reading of two is missing.
    Formula: ports: count x circle of their diameter.
    Source: geometry.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> found = damper(load(jobs()["enduro"]), "rear")
        >>> round(found.sizes.rod), round(found.sizes.piston), found.count
        (201, 1662, 1)
    """
    path = rod_path(job, axle)
    try:
        sizes = Sizes.of(job.value(path), job.value(f"{axle}.damper_piston"))
    except Impossible as error:
        raise Impossible(error.code, error.message, error.way_out, path) from error
    own_oil = axle == "front" and job.entered("oil.density")
    return Damper(
        sizes=sizes,
        count=int(job.choice("rear.shocks")) if axle == "rear" else 2 if job.choice("front.damps") == "both" else 1,
        speed=job.value(f"{axle}.shaft_speed"),
        base_drop=job.value(f"{axle}.base_drop") if job.entered(f"{axle}.base_drop") else None,
        vapour=job.value(f"{axle}.vapour"),
        ports=_ports(job, axle),
        density=job.value("oil.density") if own_oil else DENSITY,
    )


def rod_path(job: Job, axle: Axle) -> str:
    """The field that holds the diameter of the damper's rod.

    Parameters: job; axle.
    Returns: path.
    Raises: nothing. Formula: none. Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> rod_path(load(jobs()["enduro"]), "front"), rod_path(load(jobs()["trail"]), "front")
        ('front.damping_rod', 'front.damper_rod')
    """
    if axle == "rear":
        return "rear.rod_diameter"
    return "front.damper_rod" if job.fields["front.damper_rod"].applies else "front.damping_rod"


def _ports(job: Job, axle: Axle) -> Number | None:
    paths = (f"{axle}.ports", f"{axle}.port_diameter")
    entered = [path for path in paths if job.entered(path)]
    if len(entered) == 1:
        missing = next(path for path in paths if path not in entered)
        words = f"{job.fields[missing].field.label} is not entered."
        raise Impossible("missing", words, "The ports need both: how many, and how wide.", missing)
    return job.value(paths[0]) * circle(job.value(paths[1])) if entered else None
