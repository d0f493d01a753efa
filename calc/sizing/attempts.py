"""Setups beside the answer: what the user tries, and what was built, leg by leg as it was read back."""

from __future__ import annotations

from dataclasses import replace

import numpy as np

from calc.end.figures import Figures
from calc.end.setup import Setup
from calc.impossible import Impossible
from calc.job import Job
from calc.model.inputs import attempted
from calc.practice import Axle
from calc.sizing.choice import EndSizing


def tried(job: Job, axle: Axle, done: EndSizing, answer: Setup | None) -> tuple[Setup, Figures | None, Impossible | None] | None:
    """A setup that the user tries beside the answer.

    Parameters: job; axle; done, the nominal sizing; answer, None where there is none.
    Returns: the setup, its figures, or why it has none; None altogether where nothing is tried. What is left empty is the answer's,
    or else what is fitted.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example: see `tests/unit/sizing/test_advice.py`.
    """
    base = answer or done.found_setup
    paths = {
        part: f"{axle}.tried_{part}"
        for part in (("rate", "preload", "gap", "pressure") if axle == "front" else ("rate", "preload"))
    }
    named = {part: job.number(path) for part, path in paths.items() if job.fields[path].applies and job.known(path)}
    if not named:
        return None
    pressure = named.pop("pressure", None)
    air = base.air if pressure is None or base.air is None else replace(base.air, pressure=pressure)
    rate, preload, gap = (named.get(part, getattr(base, part)) for part in ("rate", "preload", "gap"))
    setup = Setup(rate, preload, gap, 0.0 if "rate" in named else base.split, air)
    return setup, *attempted(done.inputs, setup)


def built(job: Job, axle: Axle, done: EndSizing, answer: Setup | None) -> tuple[Setup, Figures | None, Impossible | None] | None:
    """What was built, both legs, as it was read back.

    Parameters: job; axle; done, the nominal sizing; answer, None where there is none.
    Returns: the setup, its figures, or why it has none; None altogether while nothing is entered. What is missing is named, never
    filled in. Of an air spring its pressure is entered; what else is set with it is the answer's, or else as found.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example: see `tests/unit/sizing/test_advice.py`.
    """
    paths = {path.split("built_")[1]: path for path in job.fields if path.startswith(f"{axle}.built_")}
    named = {part: job.number(path) for part, path in paths.items() if job.fields[path].applies and job.known(path)}
    if not named:
        return None
    base = answer or done.found_setup
    gaps = ("gap_left", "gap_right") if axle == "front" and float(np.asarray(base.gap)) > 0 else ()
    needed = ("rate", "preload", *gaps) if base.air is None else ("pressure",)
    for part in needed:
        if part not in named:
            label = job.fields[paths[part]].field.label
            way_out = "Enter it: the card tells what was built whole."
            return base, None, Impossible("missing", f"{label} is not entered.", way_out, paths[part])
    left, right = (named.get(f"gap_{leg}", gap) for leg, gap in zip(("left", "right"), base.gaps, strict=True))
    gap, gap_split = 0.5 * (left + right), 0.5 * (right - left)
    if base.air is not None:
        setup = replace(base, air=replace(base.air, pressure=named["pressure"]), gap=gap, gap_split=gap_split)
    else:
        one, other = named["rate"], named.get("rate_right", named["rate"])
        setup = Setup(0.5 * (one + other), named["preload"], gap, 0.5 * (other - one), None, gap_split)
    return setup, *attempted(done.inputs, setup)
