"""What the report says of the whole bike: what the new sags do to it, whether the scales agree, what to measure first."""

from __future__ import annotations

import math
from collections.abc import Mapping

import numpy as np

from calc.impossible import Impossible
from calc.job import Job
from calc.model import aboard, loaded
from calc.practice import Axle
from calc.report.data import Data, number_text, plus_minus_text, quantity, with_half

SCALES_AGREE = 3.0  # kg; two readings of +/-1 and one of +/-0.5 each side differ by less; common practice, no source

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


def to_measure(job: Job) -> list[Data]:
    """The next readings to take, most useful first by common practice."""
    open_ = [(path, words) for path, words in MEASURE_ORDER if job.fields[path].applies and not job.entered(path)]
    return [{"path": path, "words": words, "how": job.fields[path].field.how} for path, words in open_[:AT_ONCE]]


def scale_notes(job: Job) -> list[str]:
    """Where readings contradict each other."""
    try:
        base = loaded(job)
        aboard(job)
    except (Impossible, KeyError):
        return []
    notes: list[str] = []
    if job.entered("rider.front_axle") and job.entered("rider.rear_axle"):
        read = job.number("rider.front_axle") + job.number("rider.rear_axle")
        off = read - float(np.asarray(base.front + base.rear)) - job.number("rider.mass")
        if abs(off) > SCALES_AGREE:
            notes.append(
                f"The four axle readings and the rider's mass differ by {number_text(abs(off), 1)} kg: "
                "weigh again, or check the rider."
            )
    if job.choice("rider.posture") != job.posture and (job.entered("rider.front_axle") or job.entered("rider.rear_axle")):
        notes.append(
            f"The axles were read {job.choice('rider.posture')}; sags here are read {job.posture}. "
            "The difference of the usual shares was used."
        )
    return notes


def attitude(job: Job, ends: Mapping[Axle, Data]) -> Data | None:
    """What going from the found to the recommended setup does to ride height and rake; None where an end has no answer.

    The +/- of the rake is both ends' together, so it is the most that it can be: they are drawn one at a time.
    """
    front, rear = (ends[end].get("moved") for end in ("front", "rear"))
    if front is None or rear is None:
        return None
    shift = front["along"] | {"case": "tubes up through the clamps to cancel the front's change"}
    data = {"front_height": front["height"], "rear_height": rear["height"], "clamp_shift": shift, "rake_change": None}
    if job.known("bike.wheelbase"):
        base = job.number("bike.wheelbase")
        turned = math.degrees(math.atan2(front["height"]["value"] - rear["height"]["value"], base))
        halves = [moved["height"]["plus_minus_95"] for moved in (front, rear)]
        half = None if None in halves else math.degrees(sum(halves) / base)
        data["rake_change"] = with_half(quantity(turned, "°", "rider aboard, as found to recommended, steeper is -", 1), half)
    return data | {"words": _attitude_words(data)}


def _attitude_words(data: Data) -> str:
    def moved(name: str, figure: Data) -> str:
        millimetres, band = number_text(abs(figure["value"]), 0), plus_minus_text(figure)
        if millimetres == "0":
            return f"the {name} stays where it is{band and f', {band} mm'}"
        return f"the {name} sits {millimetres}{band and f' {band}'} mm {'higher' if figure['value'] > 0 else 'lower'}"

    text = f"Against as found, {moved('front', data['front_height'])} and {moved('rear', data['rear_height'])}."
    shift = data["clamp_shift"]
    if number_text(abs(shift["value"]), 0) != "0":
        way = "up" if shift["value"] > 0 else "down"
        text += f" To cancel the front's change, move the tubes {number_text(abs(shift['value']), 0)} mm {way} through the clamps."
    if data["rake_change"] is not None:
        band = plus_minus_text(data["rake_change"])
        text += f" Rake changes by {number_text(data['rake_change']['value'], 1)}°{band and f' {band}°'}."
    return text
