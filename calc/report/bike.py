"""What the report says of the whole bike: what the new sags do to it, whether the scales agree, what to measure first."""

from __future__ import annotations

import math

from calc.end.attitude import clamp_shift, rake_change
from calc.impossible import Impossible
from calc.job import Job
from calc.model import aboard
from calc.model.origins import found_was_read
from calc.practice import AXLES, Axle
from calc.report.quantity import banded_text, number_text, quantity, size_text, with_half
from calc.report.types import Attitude, Ends, MeasureFirst, Quantity
from calc.uncertainty.corrected import SagsFound

# What narrows an answer most, in the order that a bench takes it; common practice, no source. Bands will rank it.
_RIDER = "rider.mass"
MEASURE_ORDER: tuple[tuple[str, str], ...] = (
    (_RIDER, "Weigh the rider in full kit."),
    ("rider.front_axle", "Weigh the front axle with the rider aboard."),
    ("rider.rear_axle", "Weigh the rear axle with the rider aboard."),
    ("bike.front_axle", "Weigh the front axle, bike alone."),
    ("bike.rear_axle", "Weigh the rear axle, bike alone."),
    ("front.rate", "Read the marking on the fork springs."),
    ("rear.rate", "Read the marking on the shock spring."),
    ("front.travel", "Look up or measure the fork travel."),
    ("rear.travel", "Look up or measure the rear wheel travel."),
    ("front.gap_left", "Read the gap, both legs."),
    ("front.seal_diameter", "Measure the chrome tube by vernier."),
    ("rear.leverage", "Measure wheel travel against shock stroke."),
    ("front.collapsed_stroke", "Measure exposed chrome, hanging and collapsed."),
    ("standard.gap", "Look up the gap as sold."),
    ("front.unsprung", "Weigh the front wheel and what moves with it."),
)
AT_ONCE = 3


def rider_unweighed(job: Job) -> bool:
    """True where the rider is neither weighed nor in what the axles carry: then all is told for the one the bike is sold for."""
    return not job.entered(_RIDER) and not all(job.entered(f"rider.{axle}_axle") for axle in AXLES)


def to_measure(job: Job) -> tuple[MeasureFirst, ...]:
    """The next readings to take, most useful first by common practice."""
    needed = [(path, words) for path, words in MEASURE_ORDER if path != _RIDER or rider_unweighed(job)]
    open_ = [(path, words) for path, words in needed if job.fields[path].applies and not job.entered(path)]
    return tuple(MeasureFirst(path, words, job.fields[path].field.how) for path, words in open_[:AT_ONCE])


def scale_notes(job: Job) -> list[str]:
    """What was made of axle readings that were taken in another posture."""
    try:
        aboard(job)
    except (Impossible, KeyError):
        return []
    if job.choice("rider.posture") != job.posture and (job.entered("rider.front_axle") or job.entered("rider.rear_axle")):
        return [
            f"The axles were read {job.choice('rider.posture')}; sags here are read {job.posture}. "
            "The difference of the usual shares was used."
        ]
    return []


_CLEARS = 5.0  # mm: tubes moved further are looked at by the lower clamp; common practice, no source


def attitude(job: Job, ends: Ends, found: SagsFound) -> Attitude | None:
    """What going from the found to the recommended setup does to the bike; None where an end has no answer.

    `job` is corrected by the sags `found`. Each +/- is both ends' together, so it is the most that it can be: they are drawn one
    at a time.
    """
    if ends.front.state != "ok" or ends.rear.state != "ok" or ends.front.moved is None or ends.rear.moved is None:
        return None
    front, rear, rake = ends.front.moved.height, ends.rear.moved.height, job.number("bike.rake")
    half = None
    if front.plus_minus_95 is not None and rear.plus_minus_95 is not None:
        half = front.plus_minus_95 + rear.plus_minus_95
    case = "tubes up through the clamps to bring front against rear back to as found"
    shift = with_half(
        quantity(clamp_shift(front.value, rear.value, rake), "mm", case, 0), None if half is None else half / math.cos(rake)
    )
    turned = None
    if job.known("bike.wheelbase"):
        wheelbase = job.number("bike.wheelbase")
        angle = math.degrees(float(rake_change(front.value, rear.value, wheelbase)))
        case = "rider aboard, as found to recommended, steeper is -"
        turned = with_half(quantity(angle, "°", case, 1), None if half is None else math.degrees(half / wheelbase))
    assumed = tuple(axle for axle in AXLES if not (found_was_read(job, axle) or _sag_came_in(axle, job, found)))
    return Attitude(front, rear, shift, turned, _attitude_words(front, rear, shift, turned, assumed))


def _sag_came_in(axle: Axle, job: Job, found: SagsFound) -> bool:
    """Whether a rider sag read as it came in is what the figures of how it came in rest on."""
    of_found = found.applied and job.choice("bike.sags_of") == "found"
    return of_found and any(one.believed and one.read.axle == axle and one.read.case == "aboard" for one in found.compared)


def _attitude_words(
    front: Quantity, rear: Quantity, shift: Quantity, turned: Quantity | None, assumed: tuple[Axle, ...] = ()
) -> str:
    """What is told of it; `assumed`: of which ends nobody read how they came in."""

    def moved(name: str, figure: Quantity) -> str:
        millimetres, band = size_text(figure), figure.plus_minus_text
        if millimetres == "0":
            return f"the {name} stays where it is{band and f', {band} mm'}"
        return f"the {name} sits {millimetres}{band and f' {band}'} mm {'higher' if figure.value > 0 else 'lower'}"

    text = f"Compared with how it came in, {moved('front', front)} and {moved('rear', rear)}."
    if size_text(shift) == "0":
        return f"{text} Front against rear is as it was."
    if abs(shift.value) <= (shift.plus_minus_95 or 0.0):
        by = banded_text(shift, size_text(shift))
        return f"{text} Front against rear that is {by} mm, which may be no change at all: leave the tubes."
    slacker = shift.value > 0
    by = "" if turned is None or not float(size_text(turned)) else f" {size_text(turned)} {turned.plus_minus_text}".rstrip() + "°"
    text += f" That makes the rake{by} {'slacker' if slacker else 'steeper'}."
    if assumed:
        return f"{text} How the {' and the '.join(assumed)} came in is assumed: read the sags before you move the tubes."
    apart = number_text(abs(front.value - rear.value), 0)
    clamps = f"{size_text(shift)} mm {'up' if slacker else 'down'} through the clamps"
    raised = f"{'raise' if slacker else 'lower'} the rear {apart} mm at the axle"
    return (
        f"{text} To bring front against rear back, move the tubes {clamps}, "
        f"or {raised} by the shock's length or top mount, not by its preload.{_clearance_words(shift)}"
    )


def _clearance_words(shift: Quantity) -> str:
    """What tubes that are moved far are looked at for: common practice, no source."""
    if abs(float(size_text(shift))) <= _CLEARS:
        return ""
    if shift.value > 0:
        return " Before it is ridden, check at full travel that wheel and mudguard clear the lower clamp and the radiator."
    return " Before it is ridden, check that both clamps still hold the full tube, and that hoses and cables reach."
