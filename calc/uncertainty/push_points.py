"""The points of a bench push as readings of the leg as the job has it: what they may correct, or why they correct nothing."""

from __future__ import annotations

from functools import lru_cache

from calc.impossible import Impossible
from calc.job import Job, Ranges, Resolved
from calc.model.push_read import OPEN, Push, as_pushed, push_read
from calc.model.pushed import pushed_leg, why_not
from calc.uncertainty.evidence import most_misfit
from calc.uncertainty.pushing import OF_THE_LEG, Pushing

_BESIDE = ("bike.use", "standard.gap")  # what a leg's fields may follow: an edit of all else asks nothing anew
_SAY = "Say which condition the cartridge is in: then the points can correct the readings of the leg."
_GAP_BEFORE = (
    "With this leak the points correct nothing: they go with the gap set while the cartridge was shut, "
    "your readings with the gap now."
)
_OPENED = "The cartridge is open by now, and the points go with the gap set while it was shut: they correct nothing of it as it is."
_NOT_SO = "The points do not fit the leg as entered, so they correct nothing."


def correcting(job: Job) -> tuple[Pushing | None, str]:
    """The push of a job as readings that may correct others.

    Parameters: job, not drawn.
    Returns: Pushing in the state that the job is in; None and why in words where the push corrects nothing, None and nothing where
    there is no push or it is only to be compared.
    Raises: nothing.
    Formula: the state is the one that was entered, never one that the same points told. Its misfit is one that happens, as
    `calc.uncertainty.evidence.most_misfit` has it: else readings would be bent to a state that the leg is not in.
    Source: none.
    Example:
        >>> from calc.job import load
        >>> said = {"bike": {"use": "enduro"}, "front": {"push_points": "250 310; 280 520", "air": "sealed cartridge"}}
        >>> correcting(load({"format": "stanchion-job", "version": 4} | said))[1][:33]
        'Say which condition the cartridge'
    """
    push = push_read(job)
    if push is None or job.choice("front.push_correct") == "no":
        return None, ""
    refused = why_not(job, push)
    if refused:
        return None, refused
    how, why = _state(job)
    if why:
        return None, why
    own = tuple(found for path, found in job.fields.items() if path.startswith(OF_THE_LEG) or path in _BESIDE)
    why = _unfit(own, job.ranges, how)
    return (None, why) if why else (Pushing(as_pushed(job, push), push, how), "")


def _state(job: Job) -> tuple[str, str]:
    """The state that the leg is in, as entered; why none is known that its gap was read in."""
    if job.choice("front.air") != "sealed cartridge":
        return OPEN, ""
    how = job.choice("front.cartridge_state")
    if not job.entered("front.cartridge_state"):
        return how, _SAY
    if how == "opened into one":
        return how, _OPENED
    vented = job.choice("front.cartridge_fill") != "gas" and job.choice("front.piston_back") != "outer"
    return how, _GAP_BEFORE if how == "seal leaking" and vented else ""


@lru_cache(maxsize=4)
def _unfit(fields: tuple[Resolved, ...], ranges: Ranges, how: str) -> str:
    """Why the leg in that state gives no such push, in words; empty where it may."""
    job = Job({}, {found.field.path: found for found in fields}, ranges=ranges)
    push = push_read(job)
    assert push is not None
    refused = why_not(job, push) or _impossible(job, push, how)
    if refused:
        return f"The points correct nothing. {refused}"
    misfit = Pushing(as_pushed(job, push), push, how).misfit()
    return "" if misfit is not None and misfit <= most_misfit(len(push.strokes)) else _NOT_SO


def _impossible(job: Job, push: Push, how: str) -> str:
    try:
        pushed_leg(as_pushed(job, push), push, how)
    except Impossible as error:
        return f"{error.message} {error.way_out}".rstrip()
    return ""
