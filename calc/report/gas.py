"""What the report says of a fork's gas that is not one open space, and of oil known by its volume."""

from __future__ import annotations

from calc.job import Job
from calc.model.gap import by_volume
from calc.report.cautions import CARTRIDGE_CAUTION, CAUTIONS, PUMPED_CAUTION

_STATES = {
    "seal leaking": "As found the cartridge's seal leaks; as sold is worked out with it as built.",
    "oil moved": "As found oil has crossed the cartridge's seal; as sold is worked out with it as built.",
    "opened into one": "The cartridge is opened into the leg, its charge gone; as sold is worked out with it as built.",
}


def gas_notes(job: Job) -> list[str]:
    """Notes on the fork's gas; none for a plain open leg with its gap read."""
    notes = []
    if job.choice("front.gap_from") == "volume filled":
        notes.append("Oil by volume is reliable only in a dry leg: drained legs keep 10-25 ml, cartridges 30-60 ml.")
        if not by_volume(job):
            notes.append(
                "Without a fill-to-brim reading the gap as found is not known: only changes hold. 10 ml more oil is 10 ml less gas."
            )
    kind = job.choice("front.air")
    if kind == "sealed cartridge":
        how = job.choice("front.cartridge_state")
        if how in _STATES:
            notes.append(_STATES[how])
        if how == "seal leaking" and job.choice("front.leak") == "small":
            notes.append("Sags take the leak's two sides as equal; frequency, end force and landing take the leak as shut.")
        if how == "seal leaking" and job.choice("front.cartridge_fill") == "spring" and job.choice("front.piston_back") == "vented":
            notes.append(
                "The vented piston is taken to stay at its front stop. Where the leg's pressure passes its spring's, deep in the "
                "stroke, it gives way: the end force is then below what is told."
            )
    if kind == "air leg":
        notes.append(
            "An air spring's volumes are read cold, at full extension. It loses a little: read its pressure before each ride."
        )
    return notes


def cautions(job: Job) -> dict[str, tuple[str, str]]:
    """The cautions that hold for a job: those for every job, and those of what its fork holds."""
    kind = job.choice("front.air")
    more = {"sealed cartridge": {"cartridge": CARTRIDGE_CAUTION}, "air leg": {"pumped": PUMPED_CAUTION}}
    return {**CAUTIONS, **more.get(kind, {})}
