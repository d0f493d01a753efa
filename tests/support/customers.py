"""Made-up bikes with a customer at them: what is true, what a tape then finds, and what a bench that knew it all would do."""

from __future__ import annotations

from dataclasses import dataclass, replace
from random import Random

import numpy as np

from calc.impossible import Impossible
from calc.job import Job, load
from calc.job.customer import LENGTHS, TAPED
from calc.model.draws import at_normal
from calc.model.inputs import end_inputs
from calc.model.limits import AS_SOLD
from calc.model.observed import expected
from calc.practice import Axle, posture, usual
from calc.sizing.choice import size_end
from calc.sizing.margins import moved_readings
from calc.uncertainty.directions import SOLD_OFF, STILL_AS_SOLD, way

USES = ("enduro", "motocross", "road", "adventure", "track", "supermoto", "trials", "dual-sport", "youth")
FRICTIONS, READINGS, POSES = (0.3, 0.7, 1.0), (0.5, 1.0, 1.5, 2.0), (0.0, 1.5, 3.0)
HANGING = 600.0
REAR = dict(zip(LENGTHS, ("600", "585", "590", "520", "525"), strict=True))
SAYS = {-1: "stiff", 0: "suits", 1: "soft"}  # a bench that goes stiffer finds the spring too soft


@dataclass(frozen=True, eq=False)
class Truth:
    """A bike and its rider as they are: kind of riding, rider [kg], whether the spring is as sold, and what a bench would say."""

    use: str
    rider: int
    spring: str
    job: Job
    says: str
    axle: Axle = "rear"


def made_up(rng: Random, axle: Axle = "rear") -> Truth:
    """A bike from the trade's ranges, sold to ride near the usual frequency, its spring mostly as sold, its rider of any weight."""
    use, sold = rng.choice(USES), AS_SOLD[axle].split(".")[1]
    row = usual("standard rider", use)
    while True:
        rider = round(row.typical * rng.uniform(0.7, 1.35))
        spring = "as sold" if rng.random() < STILL_AS_SOLD else "changed"
        bike = load(
            {
                "format": "stanchion-job", "version": 2, "bike": {"use": use}, "standard": {sold: "changed"},
                "rider": {"mass": {"value": f"{rider} kg", "plus_minus_95": "2 kg", "origin": "measured"}},
            }
        )  # fmt: skip
        z = {path: np.array([rng.gauss(0, 1)]) for path in moved_readings(bike)}
        path = AS_SOLD[axle]
        job = at_normal(bike, z, 1)
        job = replace(job, fields={**job.fields, path: replace(job.fields[path], choice=spring)})
        try:
            here = end_inputs(job, axle)
            low, high = here.targets.windows.frequency
            ride = float(np.ravel(here.standard.frequency)[0])
            off = max(np.log(low / ride), np.log(ride / high), 0.0) / SOLD_OFF
            if rng.random() > np.exp(-0.5 * off**2):
                continue
            went, _ = way(here, size_end(replace(job, samples={}), axle), job.number(f"{axle}.step"))
        except Impossible:
            continue
        if int(went[0]) in SAYS:
            return Truth(use, rider, spring, job, SAYS[int(went[0])], axle)


def read(rng: Random, truth: Truth, friction: float, reading: float, pose: float) -> dict[str, str]:
    """What the customer types: lengths [mm] with friction (a part of the bike's own), reading error [mm] and posture off by so many
    points of the rider's weight on the front, each a standard deviation.
    """
    share = f"rider.front_share_{posture(truth.use)}"
    posed = np.asarray(truth.job.value(share)) + pose * rng.gauss(0, 1) / 100.0
    found = expected(replace(truth.job, samples={**truth.job.samples, share: posed}), truth.axle)
    lengths = [HANGING]
    for sag, stick in zip(np.ravel(found.sags), np.ravel(found.friction) * friction, strict=True):
        lengths += [HANGING - max(sag + stick, 0.0), HANGING - max(sag - stick, 0.0)]
    taped = [f"{length + rng.gauss(0, reading):.0f}" for length in lengths]
    said = {"bike.use": truth.use, "rider.mass": f"{truth.rider}", **dict(zip(TAPED[truth.axle].every, taped, strict=True))}
    if truth.axle == "front":
        said |= REAR  # of a rear that nobody asks about: it must be there, and changes nothing
    return said | ({AS_SOLD[truth.axle]: truth.spring} if rng.random() < 0.5 else {})
