"""What the points of a bench push do to the answer, in words: which readings they correct, or why they correct none."""

from __future__ import annotations

from calc.job import Job
from calc.report.corrected import corrected_readings, points_words
from calc.report.push_words import LABELS
from calc.report.types import PushReport
from calc.uncertainty.corrected import SagsFound

_COMPARED = "The answer rests on your readings as they are: these points are only compared."
_NONE = "These points change none of your readings."


def corrects_words(job: Job, report: PushReport, found: SagsFound) -> tuple[str, ...]:
    """What the points correct, reading by reading; where the state entered is not the one that they tell, that first.

    Parameters: job, not corrected; report, of its push; found, what was found of the job says of its readings.
    Returns: sentences.
    Raises: nothing. Formula: none. Source: none.
    Example: see `tests/whole/test_push_corrects.py`.
    """
    if job.choice("front.push_correct") == "no":
        return (_COMPARED,)
    if found.push_refused:
        return (found.push_refused,)
    left_out = points_words(found)
    corrections = tuple(one.words for one in corrected_readings(found)) if "push" in found.by else ()
    return (*_not_that_state(job, report), *left_out, *(corrections or (() if left_out else (_NONE,))))


def _not_that_state(job: Job, report: PushReport) -> tuple[str, ...]:
    """That the points say another state than the one that the answer rests on, or tell none."""
    entered = job.fields["front.cartridge_state"]
    if job.choice("front.air") != "sealed cartridge" or entered.choice in report.states:
        return ()
    label = entered.field.choices[entered.choice]
    if not report.states:
        return (f"The cartridge is taken as you entered it, “{label}”: the points alone can't tell.",)
    told = " or ".join(LABELS[state].lower() for state in report.states)
    return (f"You entered the cartridge as “{label}”, and the answer rests on that. These points say {told}: change it first.",)
