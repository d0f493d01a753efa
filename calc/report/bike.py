"""What the report says of the whole bike: what the new sags do to it, whether the scales agree, what to measure first."""

from __future__ import annotations

import math
from dataclasses import replace

from calc.impossible import Impossible
from calc.job import Job
from calc.model import aboard
from calc.report.quantity import quantity, size_text, with_half
from calc.report.types import Attitude, Ends, MeasureFirst, Quantity

# What narrows an answer most, in the order that a bench takes it; common practice, no source. Bands will rank it.
MEASURE_ORDER: tuple[tuple[str, str], ...] = (
    ("rider.mass", "Weigh the rider, kitted."),
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


def to_measure(job: Job) -> tuple[MeasureFirst, ...]:
    """The next readings to take, most useful first by common practice."""
    open_ = [(path, words) for path, words in MEASURE_ORDER if job.fields[path].applies and not job.entered(path)]
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


def attitude(job: Job, ends: Ends) -> Attitude | None:
    """What going from the found to the recommended setup does to ride height and rake; None where an end has no answer.

    The +/- of the rake is both ends' together, so it is the most that it can be: they are drawn one at a time.
    """
    if ends.front.state != "ok" or ends.rear.state != "ok" or ends.front.moved is None or ends.rear.moved is None:
        return None
    front, rear = ends.front.moved.height, ends.rear.moved.height
    shift = replace(ends.front.moved.along, case="tubes up through the clamps to cancel the front's change")
    turned = _rake_change(front, rear, job.number("bike.wheelbase")) if job.known("bike.wheelbase") else None
    return Attitude(front, rear, shift, turned, _attitude_words(front, rear, shift, turned))


def _rake_change(front: Quantity, rear: Quantity, wheelbase: float) -> Quantity:
    turned = math.degrees(math.atan2(front.value - rear.value, wheelbase))
    half = None
    if front.plus_minus_95 is not None and rear.plus_minus_95 is not None:
        half = math.degrees((front.plus_minus_95 + rear.plus_minus_95) / wheelbase)
    return with_half(quantity(turned, "°", "rider aboard, as found to recommended, steeper is -", 1), half)


def _attitude_words(front: Quantity, rear: Quantity, shift: Quantity, turned: Quantity | None) -> str:
    def moved(name: str, figure: Quantity) -> str:
        millimetres, band = size_text(figure), figure.plus_minus_text
        if millimetres == "0":
            return f"the {name} stays where it is{band and f', {band} mm'}"
        return f"the {name} sits {millimetres}{band and f' {band}'} mm {'higher' if figure.value > 0 else 'lower'}"

    text = f"Against as found, {moved('front', front)} and {moved('rear', rear)}."
    if size_text(shift) != "0":
        way = "up" if shift.value > 0 else "down"
        text += f" To cancel the front's change, move the tubes {size_text(shift)} mm {way} through the clamps."
    if turned is not None:
        text += f" Rake changes by {turned.text}°{turned.plus_minus_text and f' {turned.plus_minus_text}°'}."
    return text
