"""The verdict of an end: keep, fit, the nearest, or not to be told yet; and why."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

import numpy as np

from calc.job import Job
from calc.model.limits import standard_preload_known
from calc.practice import Axle
from calc.report.asking import unknown
from calc.report.names import spring_names, what_is_in_was_read
from calc.report.quantity import figure_text, number_text, quantity
from calc.report.setups import Cases
from calc.report.types import Candidate, SizedEnd, YardstickReport
from calc.report.words import answer_words, best_words, load_words, preload_words, ride_words, yardstick_words
from calc.sizing.choice import EndSizing
from calc.uncertainty.bands import Bands

# Criteria whose figures another line tells: of what was wanted and is not reached, of an air spring's volumes.
_COVERED_BY = {
    "preload below": {"rider sag"}, "preload above": {"rider sag"}, "sag unreachable": {"rider sag"},
    "pressure most": {"rider sag"},
    "end unreachable": {"end of travel"},
}  # fmt: skip
_COVERED_BY_PRESSURE = {"free sag"}

Kind = Literal["keep", "fit", "nearest", "open"]


@dataclass(frozen=True, eq=False)
class Answered:
    """Which candidate is told, -1 for none, and the bands that say so; None before they are worked out."""

    index: int
    bands: Bands | None = None


def answered_first(done: EndSizing) -> Answered:
    """What is told before it is known how sure it is."""
    return Answered(done.choice)


def verdict(job: Job, axle: Axle, done: EndSizing, common: SizedEnd, chosen: Candidate, answered: Answered) -> tuple[Kind, str]:
    """The kind of verdict and its sentence."""
    kind = _kind(done, answered)
    cause = ""
    if kind == "open" and answered.bands is not None:
        causes = [one.path for one in answered.bands.causes.get("rate", ())]
        cause = unknown(job, causes[0]) if causes else ""
    read = not chosen.fitted or what_is_in_was_read(job, axle, chosen)
    barred = "" if chosen.fitted else "; ".join(veto.words for one in common.candidates if one.fitted for veto in one.vetoes)
    return kind, answer_words(axle, kind, chosen, cause, read, barred)


def _kind(done: EndSizing, answered: Answered) -> Kind:
    if answered.bands is not None and not answered.bands.choices.settled:
        return "open"
    if not bool(done.decision.criteria_met):
        return "nearest"
    return "keep" if bool(done.decision.kept) else "fit"


def why(job: Job, axle: Axle, done: EndSizing, common: SizedEnd, chosen: Candidate, kind: Kind) -> list[str]:
    """Why: the load against the standard rider's, the ride frequencies, what would be nearer, what is not reached."""
    standard = done.inputs.standard
    sold = standard.end_force / standard.end_multiple
    extra, read = float(np.asarray(done.inputs.loads.aboard / sold)) - 1.0, what_is_in_was_read(job, axle, chosen)
    lines = [load_words(axle, extra), ride_words(chosen, common.yardstick, common.as_found.setup, common.windows.frequency, read)]
    best, rates = int(done.decision.best), np.atleast_1d(done.sized.setup.rate)
    if kind == "keep" and read and not chosen.pressure and best >= 0 and best != done.fitted:
        lines.append(best_words(float(rates[best]), float(rates[done.choice]), done.step, spring_names(job, axle, done)))
    lines += [
        *_short_as_sold(job, axle, done),
        *_more_preload(job, axle, common, chosen),
        *_may_bind(job, axle, done, chosen),
        *_oil_stays(done, chosen),
    ]
    covered = _COVERED_BY_PRESSURE if chosen.pressure else set()
    covered = covered.union(*(_COVERED_BY.get(one.code, ()) for one in chosen.short))
    missed = [one.words for one in chosen.criteria if one.state == "outside" and one.name not in covered and kind != "nearest"]
    missed += [one.words for one in chosen.short]
    return [*lines, *(f"{words[0].upper()}{words[1:]}." for words in missed)]


def _short_as_sold(job: Job, axle: Axle, done: EndSizing) -> list[str]:
    """That even the rider whom the bike is sold for would not sag as is wanted: then a reading or an assumption is off."""
    here = done.inputs
    if standard_preload_known(job, axle) or here.assembly.springs == 0 or np.any(np.asarray(here.standard_setup.preload) > 0):
        return []
    sag = here.standard.rider.stroke if here.targets.sag_is_stroke else here.standard.rider.travel
    found, wanted = (number_text(float(np.asarray(one)), 0) for one in (sag, here.targets.sag))
    if float(found) >= float(np.asarray(here.targets.windows.rider_sag[0])):
        return []
    return [
        f"As sold, with the rider it is sold for, it would sag only {found} of the {wanted} mm wanted, with no preload at all: "
        "weigh the axles, and check the springs that are in."
    ]


def _may_bind(job: Job, axle: Axle, done: EndSizing, chosen: Candidate) -> list[str]:
    """That a spring with more preload than usual may have no room left, where nobody measured how short it goes."""
    usual = job.usual("preload fork" if axle == "front" else "preload shock")
    if usual is None or chosen.pressure or done.sized.room.main is not None or float(chosen.preload.text) <= usual.high:
        return []
    return [f"With {figure_text(chosen.preload)} preload its coils may touch before full travel: measure its solid length first."]


def _oil_stays(done: EndSizing, chosen: Candidate) -> list[str]:
    """Why the gap that is in is told again, where the exact one would be another."""
    targets = done.inputs.targets
    if targets.gap_found is None or chosen.gap is None or chosen.gap.value != np.round(targets.gap_found):
        return []
    if np.isinf(targets.gap_within[0]):
        return ["The oil stays: without the gap as sold there is nothing to set it by."]
    return ["The oil stays: at full travel it comes near enough to what is wanted."]


def _more_preload(job: Job, axle: Axle, common: SizedEnd, chosen: Candidate) -> list[str]:
    """That the preload told is more than usual, where a stiffer spring on offer gives the same rider sag with less."""
    usual = job.usual("preload fork" if axle == "front" else "preload shock")
    if usual is None or chosen.pressure:
        return []
    stiffer = (one for one in common.candidates if not one.vetoes and one.rate.value > chosen.rate.value)
    less = any(one.preload.value < chosen.preload.value and one.rider_sag.text == chosen.rider_sag.text for one in stiffer)
    return [preload_words(chosen.preload, usual.low, usual.high)] if less and float(chosen.preload.text) > usual.high else []


def yardstick_of(done: EndSizing, cases: Cases) -> YardstickReport:
    """The frequency that the choice comes near to."""
    measure = done.decision.yardstick
    frequency = quantity(measure.frequency, "Hz", cases.working, 2)
    standard = quantity(done.inputs.standard.frequency, "Hz", cases.working, 2)
    source = "standard" if measure.source == "rider sag" else measure.source
    return YardstickReport(frequency, source, yardstick_words(source, figure_text(frequency), figure_text(standard)))
