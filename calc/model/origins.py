"""Which readings a work order may start from: "add 12 ml" or "collar 3 mm out" mean nothing from a number that nobody read."""

from __future__ import annotations

from calc.job import Job
from calc.model.airleg import has_coil
from calc.model.gap import by_volume
from calc.practice import Axle
from calc.quantities.reading import Origin


def was_read(job: Job, path: str) -> bool:
    """Tell whether a field was measured or stated.

    Parameters: job; path of a field.
    Returns: True for an entry that was not refused and is not called an assumption by whoever made it; of a field that was left
    empty, whether the one that it follows was read: legs are built alike.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> job = load(jobs()["enduro"])
        >>> was_read(job, "front.gap_left"), was_read(job, "front.wall")
        (True, False)
    """
    found = job.fields[path]
    if job.entered(path):
        return found.origin in (Origin.MEASURED, Origin.STATED)
    default = found.field.default
    if default is None or default.follow is None or default.row or default.value or default.by_choice:
        return False
    return was_read(job, default.follow)


def gaps_were_read(job: Job) -> bool:
    """Tell whether oil to add or take out can be ordered: the gap of both legs was read, or what was filled.

    Parameters: job.
    Returns: True where it was.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> gaps_were_read(load(jobs()["enduro"]))
        True
    """
    if by_volume(job):
        return all(was_read(job, f"front.{what}") for what in ("brim_volume", "filled_left", "filled_right"))
    return all(was_read(job, f"front.gap_{side}") for side in ("left", "right"))


def preload_was_read(job: Job, axle: Axle) -> bool:
    """Tell whether a move of the spacer or the collar can be ordered: the preload it starts from was read, or its lengths.

    Parameters: job; axle.
    Returns: True where it was.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> preload_was_read(load(jobs()["enduro"]), "front")
        True
    """
    if job.choice(f"{axle}.preload_from") == "read":
        return was_read(job, f"{axle}.preload")
    room = "space" if axle == "front" else "installed_length"
    return was_read(job, f"{axle}.free_length") and was_read(job, f"{axle}.{room}")


def found_was_read(job: Job, axle: Axle) -> bool:
    """Tell whether a change against how an end came in can be ordered: its preload was read, or an air spring's pressure.

    Parameters: job; axle.
    Returns: True where it was.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> found_was_read(load(jobs()["enduro"]), "rear")
        True
    """
    if axle == "front" and job.choice("front.air") == "air leg":
        pumped = was_read(job, "front.air_pressure")
        return pumped and (not has_coil(job) or preload_was_read(job, axle))
    return preload_was_read(job, axle)
