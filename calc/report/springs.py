"""What the report says of springs of every kind: pairs, kinds, and what to do to spacer or collar."""

from __future__ import annotations

import numpy as np

from calc.advice import EndSizing
from calc.assembly import ForkAssembly
from calc.job import Job
from calc.model import oil_to_add
from calc.report.data import Data, number_text, quantity
from calc.setup import Figures, Setup
from calc.springs.fit import Fit


def spring_lines(job: Job, end: str, chosen: Data, figures: Figures) -> list[str]:
    """What a rate stands for where the springs are not plain ones, and what their stops add."""
    kind, lines = job.choice(f"{end}.spring_kind"), []
    if kind == "stacked":
        lines.append("The rate is the main spring's; the second one is kept, and works until it closes.")
    if kind == "nested":
        lines.append("The rate is the main spring's; the second one is kept, and joins later.")
    if kind == "progressive" and not chosen["fitted"]:
        lines.append("Same shape, other mean rate: an assumption. The spring you are sold may rise otherwise; measure it.")
    if kind == "progressive" and chosen["fitted"]:
        lines.append("The rate is the mean over your table.")
    if chosen["landing_energy_rubber"] is not None:
        without, with_ = (number_text(chosen[key]["value"], 0) for key in ("landing_energy", "landing_energy_rubber"))
        lines.append(f"Landing energy {without} J without the bump rubber, {with_} J with it. The end force leaves it out.")
        if float(np.asarray(figures.end.rubber_wheel_force(figures.rider.travel))) > 0:
            lines.append("The bump rubber is touched at rider sag already: sags and frequency leave it out. Check its length.")
    return lines


def seat_data(job: Job, end: str, done: EndSizing, setup: Setup) -> Data:
    """What to do to spacer or collar from as found to the recommended preload, with the turns where the pitch is known."""
    fit = done.limits.fit
    assert fit is not None
    move = float(np.asarray(fit.move(setup.rate, setup.preload)))
    turns = move / job.number(f"{end}.pitch") if job.known(f"{end}.pitch") else None
    what = "spacer, per leg" if end == "front" else "collar, per shock"
    return {
        "move": quantity(move, "mm", f"{what}, as found to recommended, longer or further in is +", 0),
        "turns": None if turns is None else quantity(turns, "", "turns of the adjuster, further in is +", 1),
        "words": seat_words(end, move, turns, _as_long(fit, setup)),
    }


def _as_long(fit: Fit, setup: Setup) -> bool:
    """True where another spring is taken to be as long as the fitted one."""
    return not bool(fit.fitted(setup.rate)) and (fit.free is None or fit.fitted_free is None)


def seat_words(end: str, move: float, turns: float | None, as_long: bool) -> str:
    """One sentence on spacer or collar; `as_long`: another spring, taken to be as long as the fitted one."""
    millimetres = number_text(abs(move), 0)
    turned = "" if turns is None else f", {number_text(abs(turns), 1)} turns"
    if millimetres == "0":
        text = "Spacers stay" if end == "front" else "Collar stays"
    elif end == "front":
        text = f"{'Add' if move > 0 else 'Cut'} {millimetres} mm {'of spacer' if move > 0 else 'off the spacer'}"
        text += "" if turns is None else f", or turn the adjuster {number_text(abs(turns), 1)} turns {'in' if move > 0 else 'out'}"
    else:
        text = f"Collar {millimetres} mm{turned} {'in' if move > 0 else 'out'}"
    return f"{text}, for a spring as long as the fitted one." if as_long else f"{text}."


def oil_data(job: Job, fork: ForkAssembly, setup: Setup) -> dict[str, Data]:
    """Oil to add to each leg of a fork, from its own gap and spring as found to the new ones."""
    return {leg: quantity(oil, "ml", f"{leg} leg", 0, "mm3") for leg, oil in oil_to_add(job, fork, setup).items()}
