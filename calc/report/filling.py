"""The gap while filling: how much oil brings each leg from the gap read now to the gap wanted, and whether the legs match."""

from __future__ import annotations

from typing import Literal

from calc.impossible import Impossible
from calc.job import Job
from calc.model.draws import drawn, half_width
from calc.model.filling import LEGS, oil_to_gap
from calc.model.gaps import fitted_rates
from calc.model.origins import gaps_were_read
from calc.model.survivors import survivors
from calc.report.quantity import figure_text, number_text, quantity, size_text, with_half
from calc.report.types import Candidate, EndReport, Filling, LegFilled, Quantity

MATCHED = 1.0  # mm, to which the legs are matched; common practice, no source
SAME = 0.5  # mm: a gap is read to the millimetre
_BUILT = "front.built_gap_"
_READ = "front.filling_gap_"
Leg = Literal["left", "right"]
_NAMES: tuple[Leg, Leg] = ("left", "right")


def filling_report(job: Job, front: EndReport) -> Filling | None:
    """The gap while filling.

    Parameters: job, as corrected by sags found; front, its report.
    Returns: Filling; None where no gap is read, nor was.
    Raises: nothing.
    Formula: see `calc.model.filling.oil_to_gap`.
    Source: see there.
    Example: see `tests/unit/report/test_filling.py`.
    """
    if not any(job.fields[f"{_READ}{leg}"].entered for leg in LEGS):
        return None
    of: Literal["built", "answer"] = "built" if any(_number(job, f"{_BUILT}{leg}") is not None for leg in LEGS) else "answer"
    refused = next((p for leg in LEGS if (p := job.fields[f"{_READ}{leg}"].problem)), None)
    if refused is not None:
        return Filling(of, " ".join(part for part in (refused.message, refused.limit) if part), (), None, (), "")
    if front.state == "refused":
        return Filling(of, "The front has an entry that is refused, so no gap is wanted yet. Mend that first.", (), None, (), "")
    try:
        legs = tuple(one for leg in _NAMES if (one := _leg(job, front, leg)) is not None)
    except Impossible as error:
        return Filling(of, f"{error.message} {error.way_out}".rstrip(), (), None, (), "")
    problem = "" if legs else _nothing_wanted(job, front)
    apart = _apart(job)
    words = (*(one.words for one in legs), *([] if apart is None else [_apart_words(apart)]), *_wanted_apart(legs))
    return Filling(of, problem, legs, apart, words, _note(job))


def _number(job: Job, path: str) -> float | None:
    """A gap [mm] that was entered where its field applies, and not refused."""
    return job.number(path) if job.fields[path].applies and job.entered(path) else None


def _leg(job: Job, front: EndReport, leg: Leg) -> LegFilled | None:
    """One leg; None where its gap is not read now, or none is wanted."""
    read, wanted = _number(job, f"{_READ}{leg}"), _wanted(job, front, leg)
    if read is None or wanted is None:
        return None
    rate = _rate(job, front, leg)
    oil = quantity(oil_to_gap(job, leg, rate, read, wanted), "ml", f"into the {leg} leg, from the gap read now", 0, "mm3")
    _, _, samples = survivors(drawn(job), job.draws, lambda one: oil_to_gap(one, leg, rate, read, wanted))
    if samples is not None and abs(read - wanted) >= SAME:
        oil = with_half(oil, half_width(samples) / 1000.0)
    figures = (quantity(read, "mm", f"{leg} leg, read now", 0), quantity(wanted, "mm", f"{leg} leg, wanted", 0))
    return LegFilled(leg, *figures, oil, _leg_words(leg, *figures, oil))


def _wanted(job: Job, front: EndReport, leg: Leg) -> float | None:
    """The gap [mm] that a leg is to get: as built, else the answer's, else, where nothing changes it, the one as found."""
    built = _number(job, f"{_BUILT}{leg}")
    if built is not None or front.state == "refused":
        return built
    if _stays(job):
        found = front.as_found.setup
        own = None if found is None or not gaps_were_read(job) else found.gap_left if leg == "left" else found.gap_right
    else:
        own = front.chosen.gap if front.state == "ok" else None
    return None if own is None else own.value


def _stays(job: Job) -> bool:
    """Whether the fork is set by its air alone, its gap staying as found."""
    return job.choice("front.air") == "air leg" and job.choice("front.air_end") != "gap"


def _rate(job: Job, front: EndReport, leg: Leg) -> float | None:
    """Rate [N/mm] of the spring that the leg gets; None for none. It only counts where the gap is read with the spring in."""
    fitted = fitted_rates(job)[LEGS.index(leg)]
    if fitted is None:
        return None
    path = "front.built_rate_right" if leg == "right" and _number(job, "front.built_rate_right") else "front.built_rate"
    built = _number(job, path)
    if built is not None or front.state != "ok":
        return float(fitted) if built is None else built
    return _chosen_rate(front.chosen, leg)


def _chosen_rate(chosen: Candidate, leg: Leg) -> float:
    pair = chosen.pair
    return chosen.rate.value if pair is None else (pair.left if leg == "left" else pair.right).value


def _leg_words(leg: Leg, read: Quantity, wanted: Quantity, oil: Quantity) -> str:
    start = f"{leg.capitalize()}: {read.text} read, {wanted.text} wanted"
    if read.text == wanted.text:
        return f"{start}: leave it."
    amount = f"{size_text(oil)} ml" if float(size_text(oil)) else "less than 1 ml"
    band = f" ({oil.plus_minus_text})" if oil.plus_minus_text and float(size_text(oil)) else ""
    if oil.value > 0:
        return f"{start}: add {amount}{band} in this leg, wait, and read it again."
    return f"{start}: take out {amount}{band} from this leg, and read it again."


def _apart(job: Job) -> Quantity | None:
    read = [_number(job, f"{_READ}{leg}") for leg in LEGS]
    left, right = read
    return None if left is None or right is None else quantity(abs(left - right), "mm", "between the legs, as read now", 0)


def _apart_words(apart: Quantity) -> str:
    if apart.value <= MATCHED:
        return f"The legs match to {number_text(MATCHED, 0)} mm."
    return f"The legs differ by {figure_text(apart)}: match them to {number_text(MATCHED, 0)} mm."


def _wanted_apart(legs: tuple[LegFilled, ...]) -> list[str]:
    """That what is wanted does not match itself, as may be noted of what was built."""
    if len(legs) < len(LEGS) or abs(legs[0].wanted.value - legs[1].wanted.value) <= MATCHED:
        return []
    return [f"The gaps wanted are not alike, {legs[0].wanted.text} left and {legs[1].wanted.text} right: is that meant?"]


def _nothing_wanted(job: Job, front: EndReport) -> str:
    if not any(_number(job, f"{_READ}{leg}") is not None for leg in LEGS):
        return "Enter the gap that is read now."
    if _stays(job):
        return "This fork is set by its air pressure, and nobody read the gaps as found. Fill it as the maker's manual says."
    if front.state == "none":
        return "No gap is wanted yet: nothing on offer can be built."
    return "No gap is wanted of this leg yet."


def _note(job: Job) -> str:
    """How the gap is read on this fork, and what is not known of it."""
    spring, state = (job.fields[f"front.gap_{what}"] for what in ("read", "state"))
    how = ", ".join(one.field.choices[one.choice].lower() for one in (spring, state))
    notes = [f"Read as every gap of this job: {how}."]
    if job.choice("front.air") == "sealed cartridge" and job.choice("front.cartridge_state") != "opened into one":
        notes.append("The oil stands around the shut cartridge.")
    if _stays(job):
        notes.append("This fork is set by its air pressure: the gap wanted is the one as found.")
    if job.choice("front.gap_from") == "volume filled":
        notes.append("As found, the oil is known only by its volume. From the gap read now it is told as here.")
    return " ".join(notes)
