"""Axle masses and sprung loads from scales, or from masses and shares."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from calc.array import Number
from calc.end.loads import Axles, Loads, share_aboard, shared_swingarm, sprung_load
from calc.gas.atmosphere import STANDARD_GRAVITY
from calc.impossible import Impossible
from calc.job import Job
from calc.practice import SOLD_LOADED, Axle
from calc.quantities.entry import convert, internal_unit


def alone(job: Job) -> Axles:
    """Axle masses of the bike alone: both scales, one scale and the bike's mass, or mass and share.

    Parameters: job.
    Returns: Axles [kg].
    Raises: Impossible where one axle carries as much as the whole bike.
    Formula: other axle = mass - axle; or front = mass x share, rear = mass x (1 - share).
    Source: statics.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> alone(load(jobs()["enduro"])).front
        54.5
    """
    front, rear = (job.value(p) if job.known(p) else None for p in ("bike.front_axle", "bike.rear_axle"))
    if front is not None and rear is not None:
        return Axles(front, rear)
    mass = job.value("bike.mass")
    if front is not None:
        return _both(Axles(front, mass - front), "bike.front_axle", mass)
    if rear is not None:
        return _both(Axles(mass - rear, rear), "bike.rear_axle", mass)
    share = job.value("bike.front_share")
    return Axles(mass * share, mass * (1.0 - share))


def _both(axles: Axles, path: str, mass: Number) -> Axles:
    if np.any(np.minimum(axles.front, axles.rear) <= 0):
        raise Impossible(
            "axle",
            f"One axle carries as much as the whole bike of {np.min(mass):g} kg.",
            "Check the axle reading and the bike's mass.",
            path,
        )
    return axles


def loaded(job: Job) -> Axles:
    """Axle masses of the bike with passenger and luggage as they are carried now, the rider off.

    Parameters: job.
    Returns: Axles [kg].
    Raises: Impossible as `alone`.
    Formula: front + mass x share, rear + mass x (1 - share), of each that is carried.
    Source: statics.
    Example: see `tests/unit/model/test_axles.py`.
    """
    axles = alone(job)
    for who in _carried(job):
        axles = axles.plus(job.value(f"rider.{who}"), job.value(f"rider.{who}_front_share"))
    return axles


def _carried(job: Job) -> list[str]:
    """Who and what is carried besides the rider."""
    return [who for who in ("passenger", "luggage") if job.fields[f"rider.{who}"].applies and job.known(f"rider.{who}")]


def _sold_to_carry(job: Job) -> Axles:
    """Axle masses of the bike with what it is sold to carry besides the rider: nothing, but two-up the usual passenger and luggage.

    Two-up is judged loaded, so its standard rider is not alone either; what is left at home today is left out of both. The
    masses are practice's, not today's; where today's are assumed they are the same ones, and are drawn as one.
    """
    axles = alone(job)
    for who in _carried(job) if job.use in SOLD_LOADED else ():
        mass, share = _standard(job, f"rider.{who}", who), _standard(job, f"rider.{who}_front_share", f"{who} front share")
        axles = axles.plus(mass, share)
    return axles


def _standard(job: Job, path: str, row: str) -> Number:
    found = job.usual(row)
    if found is None or not job.entered(path):
        return job.value(path)
    return convert(found.typical, found.unit, internal_unit(job.fields[path].field.dimension))


def rider_share(job: Job) -> Number:
    """The rider's front share in the posture of the use: from scales, carried over between postures by the practice shares.

    Parameters: job.
    Returns: share [-]; the practice share where the rider was not weighed on an axle.
    Raises: Impossible where a reading gives a share outside 0 to 1, or a posture has no practice share.
    Formula: share read + practice share of the posture ridden - practice share of the posture read.
    Source: statics for the share read; common practice, no source, for what is carried over.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> round(rider_share(load(jobs()["enduro"])), 3)
        0.401
    """
    share = _share_on_scales(job)
    if share is None:
        return _practice_share(job, job.posture)
    read = job.choice("rider.posture")
    if read == job.posture:
        return share
    return share + _practice_share(job, job.posture) - _practice_share(job, read)


def _share_on_scales(job: Job) -> Number | None:
    base, mass = loaded(job), job.value("rider.mass")
    for axle in ("front", "rear"):
        path = f"rider.{axle}_axle"
        if job.known(path):
            share = share_aboard(getattr(base, axle), job.value(path), mass)
            _check_share(share, axle, path)
            return share if axle == "front" else 1.0 - share
    return None


def _check_share(share: Number, axle: str, path: str) -> None:
    if np.any(np.asarray(share) < 0) or np.any(np.asarray(share) > 1):
        gained = "lost weight" if np.any(np.asarray(share) < 0) else "gained more than the rider weighs"
        raise Impossible(
            "axle", f"With the rider aboard the {axle} axle {gained}.", "Weigh again, or check the rider's mass.", path
        )


def _practice_share(job: Job, posture: str) -> Number:
    path = f"rider.front_share_{posture}"
    if not job.known(path):
        raise Impossible(
            "posture",
            f"Readings taken {job.choice('rider.posture')} cannot be carried over to {job.posture}: "
            f"the trade has no {posture} share here.",
            f"Weigh again {job.posture}.",
            "rider.posture",
        )
    return job.value(path)


def aboard(job: Job) -> Axles:
    """Axle masses with the rider aboard, in the posture of the use; scale readings in that posture are taken as they are.

    Parameters: job.
    Returns: Axles [kg].
    Raises: Impossible as `alone` and `rider_share`.
    Formula: front + rider x share, rear + rider x (1 - share), where no scale reading takes its place.
    Source: statics.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> aboard(load(jobs()["enduro"])).front
        96.2
    """
    base = loaded(job)
    axles = base.plus(job.value("rider.mass"), rider_share(job))
    if job.choice("rider.posture") != job.posture:
        return axles
    if job.known("rider.front_axle"):
        axles = replace(axles, front=job.value("rider.front_axle"))
    if job.known("rider.rear_axle"):
        axles = replace(axles, rear=job.value("rider.rear_axle"))
    return axles


def unsprung_mass(job: Job, axle: Axle) -> Number:
    """Unsprung mass [kg] of an end; at the rear in parts where they were weighed.

    Parameters: job; axle.
    Returns: mass [kg].
    Raises: Impossible where a part is not entered, or as `calc.end.loads.shared_swingarm`.
    Formula: as entered whole; in parts see `calc.end.loads.shared_swingarm`.
    Source: moments about the pivot.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> unsprung_mass(load(jobs()["enduro"]), "front")
        16.0
    """
    if axle == "front" or job.choice("rear.unsprung_from") == "whole":
        return job.value(f"{axle}.unsprung")
    wheel, arm, balance, length = (_weighed(job, p) for p in ("wheel_mass", "swingarm_mass", "swingarm_balance", "swingarm_length"))
    return shared_swingarm(wheel, arm, balance, length)


def _weighed(job: Job, part: str) -> Number:
    path = f"rear.{part}"
    if not job.known(path):
        label = job.fields[path].field.label
        raise Impossible("unsprung", f"{label} is not entered.", "Enter all four, or wheel and swingarm as one figure.", path)
    return job.value(path)


def end_loads(job: Job, axle: Axle, rider: Number | None = None) -> Loads:
    """Sprung loads of an end today, or of another rider with what is carried now.

    Parameters: job; axle; rider [kg], another one of the same front share, None for today's.
    Returns: Loads [N].
    Raises: Impossible as `aboard`, `unsprung_mass` and `calc.end.loads.sprung_load`.
    Formula: (axle mass - unsprung mass) g.
    Source: statics.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> round(float(end_loads(load(jobs()["enduro"]), "front").aboard), 1)
        786.5
    """
    axles = aboard(job) if rider is None else loaded(job).plus(rider, rider_share(job))
    return _sprung(job, axle, axles)


def standard_loads(job: Job, axle: Axle) -> Loads:
    """Sprung loads of an end with the rider that the bike is sold for and what it is sold to carry.

    Parameters: job; axle.
    Returns: Loads [N]; the passenger and the luggage of today are not aboard.
    Raises: Impossible as `end_loads`.
    Formula: as `end_loads`, the standard rider at the present rider's front share.
    Source: statics.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> round(float(standard_loads(load(jobs()["enduro"]), "front").aboard), 1)
        719.6
    """
    return _sprung(job, axle, _sold_to_carry(job).plus(job.value("standard.rider"), rider_share(job)))


def rated_load(job: Job, axle: Axle, rider: Number | None = None) -> Number:
    """Sprung load [N] of an end that compares with the standard rider's.

    Parameters: job; axle; rider [kg], another one of the same front share, None for today's.
    Returns: load [N], rider aboard, without passenger and luggage where the bike is not sold to carry them.
    Raises: Impossible as `end_loads`.
    Formula: as `end_loads`.
    Source: statics.
    Example: see `tests/unit/model/test_axles.py`.
    """
    if not _carried(job) or job.use in SOLD_LOADED:
        return end_loads(job, axle, rider).aboard
    axles = alone(job).plus(job.value("rider.mass") if rider is None else rider, rider_share(job))
    return _sprung(job, axle, axles).aboard


def loaded_frequency(job: Job, axle: Axle) -> Number:
    """What the standard's ride frequency is times for a bike that carries more than it is sold to carry.

    Parameters: job; axle.
    Returns: factor [-]; 1 with nothing carried, or where the bike is sold loaded.
    Raises: Impossible as `end_loads`.
    Formula: (load without / load with)^(1/4): half of what the load adds, in proportion, is met by the spring, half by a slower
    ride. Preload first, then a spring.
    Source: common practice, no source; from adventure to two-up the tables' rear rates rise a little more, their judged ride
    frequencies fall a little more.
    Example:
        >>> from calc.job import load
        >>> bike = {"use": "road", "carries": "passenger"}
        >>> job = load({"format": "stanchion-job", "version": 1, "bike": bike, "rider": {"mass": "87 kg"}})
        >>> round(float(loaded_frequency(job, "rear")), 2)
        0.9
    """
    ratio: Number = (rated_load(job, axle) / end_loads(job, axle).aboard) ** 0.25
    return ratio


def _sprung(job: Job, axle: Axle, axles: Axles) -> Loads:
    unsprung = unsprung_mass(job, axle)
    free = sprung_load(getattr(alone(job), axle), unsprung, axle)
    return Loads(free, sprung_load(getattr(axles, axle), unsprung, axle), STANDARD_GRAVITY)
