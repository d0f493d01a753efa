"""The fitted spring: its rate, steel and solid length from its marking, or from its wire and coil."""

from __future__ import annotations

from calc.arrangement import Arrangement, SingleSpring
from calc.array import Number
from calc.impossible import Impossible
from calc.job import Job
from calc.springs import active_coils, rate_from_wire, solid_length, steel_from_mass, steel_volume
from calc.steel import GRADES


def by_wire(job: Job, end: str) -> bool:
    """True where the rate is worked out from wire and coil."""
    return job.choice(f"{end}.rate_from") == "wire"


def rate(job: Job, end: str) -> Number:
    """Rate [N/mm] of the fitted spring: marked or tested, or from wire and coil."""
    if not by_wire(job, end):
        return job.value(f"{end}.rate")
    wire, mean, coils, ends = _dimensions(job, end)
    modulus = GRADES[job.choice(f"{end}.grade")].shear_modulus
    return rate_from_wire(modulus, wire, mean, active_coils(coils, ends))


def arrangement(job: Job, end: str) -> Arrangement:
    """How the springs of an end are put together."""
    del job, end
    return SingleSpring()


def steel(job: Job) -> Number:
    """Steel [mm3] of one fitted fork spring: weighed, from wire and coil, or as entered or assumed."""
    if job.known("front.spring_mass"):
        return steel_from_mass(job.value("front.spring_mass"))
    if by_wire(job, "front") and not job.entered("front.spring_steel"):
        wire, mean, coils, _ = _dimensions(job, "front")
        return steel_volume(wire, mean, coils)
    return job.value("front.spring_steel")


def solid(job: Job, end: str) -> Number | None:
    """Solid length [mm]: measured, from wire and coil, or None where it is not known."""
    if job.known(f"{end}.solid_length"):
        return job.value(f"{end}.solid_length")
    if not by_wire(job, end):
        return None
    wire, _, coils, ends = _dimensions(job, end)
    return solid_length(wire, coils, ends)


def _dimensions(job: Job, end: str) -> tuple[Number, Number, Number, str]:
    """Wire, mean diameter [mm], coils in all, end type."""
    for part in ("wire", "coil_diameter", "coils"):
        if not job.known(f"{end}.{part}"):
            label = job.fields[f"{end}.{part}"].field.label
            raise Impossible("coil", f"{label} is not entered.", "Enter it, or take the rate from the marking.", f"{end}.{part}")
    wire = job.value(f"{end}.wire")
    return wire, job.value(f"{end}.coil_diameter") - wire, job.value(f"{end}.coils"), job.choice(f"{end}.coil_ends")
