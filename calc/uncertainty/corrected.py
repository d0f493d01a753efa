"""What the sags found, and the mark of a landing, say: a job whose readings they have corrected, and what was expected of them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np

from calc.impossible import Impossible
from calc.job import Job, Ranges, Resolved
from calc.model.draws import at_normal, half_width, is_fit_off, own_reading
from calc.model.marks import MarkRead, mark_read
from calc.model.observed import CASES, STICKS, TOPPED, SagRead, expected, sags_read
from calc.practice import AXLES, Axle
from calc.quantities.reading import Reading, Spread
from calc.sizing.margins import moved_readings
from calc.uncertainty.adjustment import Adjusted
from calc.uncertainty.question import Question

DOUBTFUL = 3.0  # standard uncertainties: what fits nothing
TOLD = 1.0  # standard uncertainties that a reading moves by, or
_EXACT = "There is nothing that these sags could be compared with: every reading is entered as exact, or the bike is at its limit."
_LEARNED = 1e-6  # of a reading's variance: less is nothing learned
NARROWED = 0.8  # of its +/- left: then its correction is told


@dataclass(frozen=True, eq=False, kw_only=True)
class Beside:
    """What was found, beside what was expected [mm].

    Parameters: expected, before anything found was looked at, and expected_half, its 95 % half-width; surprise [-], what it is
    off by in the end over what that should scatter by; believed, False where that is too much.
    """

    expected: float
    expected_half: float
    surprise: float
    believed: bool = True


@dataclass(frozen=True, eq=False, kw_only=True)
class Compared(Beside):
    """One sag: `read`."""

    read: SagRead


@dataclass(frozen=True, eq=False, kw_only=True)
class Landed(Beside):
    """The mark of a landing: `read`, beside the most that it could be expected to be."""

    read: MarkRead


@dataclass(frozen=True, eq=False)
class Correction:
    """What a reading was and what the sags make of it [its internal unit]; surprise [-] as in `Compared`."""

    path: str
    before: Reading
    after: Reading
    surprise: float


@dataclass(frozen=True, eq=False)
class SagsFound:
    """What the sags and marks of a job say.

    Parameters: fields, the corrected ones by path; draws that these hold, 0 where they hold none; compared, the sags read;
    corrections, of what was learned most about first; refused, why an end's sags say nothing.
    """

    fields: Mapping[str, Resolved]
    draws: int
    compared: tuple[Compared, ...]
    corrections: tuple[Correction, ...]
    refused: Mapping[Axle, str]
    landed: tuple[Landed, ...] = ()

    def correct(self, job: Job) -> Job:
        """The job with its readings corrected, unless it says that sags are only to be compared."""
        if not self.fields or job.choice("bike.sags_correct") == "no":
            return job
        return replace(job, fields={**job.fields, **self.fields}, draws=min(job.draws, self.draws or job.draws))


def sags_found(job: Job, with_draws: bool = True) -> SagsFound:
    """What the sags of a job say about its readings, front and rear at once.

    Parameters: job, not drawn; with_draws, whether the corrected readings are drawn too, for whoever works out bands.
    Returns: SagsFound; the corrected values are the same either way, what is told of their +/- is the draws' where there are any.
    Raises: nothing.
    Formula: see `calc.uncertainty.adjustment`; a sag read twice counts with its mean, and half of what the two differ by as
    friction; one read once is unsure by the friction too.
    Source: see there.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.job import load
        >>> sags_found(load(jobs()["enduro"])).compared
        ()
    """
    return _found(tuple(job.fields.values()), job.ranges, job.draws, with_draws)


@lru_cache(maxsize=4)
def _found(fields: tuple[Resolved, ...], ranges: Ranges, draws: int, with_draws: bool) -> SagsFound:
    job = Job({}, {found.field.path: found for found in fields}, ranges=ranges, draws=draws)
    reads: list[SagRead | MarkRead] = []
    refused: dict[Axle, str] = {}
    for axle in AXLES:
        these = sags_read(job, axle)
        reason = _refused(job, axle, these) if these else ""
        if reason:
            refused[axle] = reason
        else:
            reads += these
        reads += _marks(job, axle)
    if not reads:
        return SagsFound({}, 0, (), (), refused)
    paths = tuple(path for path in moved_readings(job) if not is_fit_off(path))
    found = _believed(Question(job, tuple(reads), paths), refused, with_draws) if paths else None
    if found is None:
        return SagsFound({}, 0, (), (), refused | {read.axle: _EXACT for read in reads if isinstance(read, SagRead)})
    return found


def _refused(job: Job, axle: Axle, reads: tuple[SagRead, ...]) -> str:
    """Why an end's sags say nothing, in words; empty where they say something."""
    for read in reads:
        if read.spread is not None and read.spread > STICKS:
            which = "with the rider" if read.case == "aboard" else "of the bike alone"
            return f"The two readings {which} differ by {read.spread:.0f} mm: something sticks. Free it and measure again."
        if read.sag < -TOPPED:
            return "One sag is below 0: longer than hanging. Check the hanging length."
    sags = {read.case: read.sag for read in reads}
    if len(sags) == 2 and sags["aboard"] <= sags["alone"]:
        return "The sag with the rider is no larger than without. Check which is which."
    if any(problem.end in (axle, "both") for problem in job.problems):
        return "An entry that this rests on is refused. Mend it first."
    try:
        expected(job, axle)
    except Impossible as error:
        return f"What was in can't be worked out: {error.message} {error.way_out}".rstrip()
    return ""


def _marks(job: Job, axle: Axle) -> list[MarkRead]:
    """The mark of a landing of known height; none where that cannot be worked out, which is told beside the mark."""
    try:
        read = mark_read(job, axle)
    except Impossible:
        return []
    return [] if read is None else [read]


def _believed(asked: Question, refused: Mapping[Axle, str], with_draws: bool) -> SagsFound | None:
    """The sags that fit are believed; the one that fits least is left out, as long as any fits nothing."""
    doubtful: list[Compared | Landed] = []
    while True:
        found = asked.answered(with_draws)
        if found is None:
            return None
        compared = _compared(asked, found)
        worst = max(compared, key=lambda one: abs(one.surprise))
        if abs(worst.surprise) <= DOUBTFUL:
            break
        doubtful.append(replace(worst, believed=False))
        if len(asked.reads) == 1:
            return SagsFound({}, 0, _sags(doubtful), (), refused, _landings(doubtful))
        asked = replace(asked, reads=tuple(read for read in asked.reads if read is not worst.read))
    fields = _fields(asked, found)
    draws = 0 if found.draws is None else found.draws.shape[1]
    both = [*doubtful, *compared]
    return SagsFound(fields, draws, _sags(both), _corrections(asked, found, fields), refused, _landings(both))


def _sags(compared: list[Compared | Landed]) -> tuple[Compared, ...]:
    sags = [one for one in compared if isinstance(one, Compared)]
    return tuple(sorted(sags, key=lambda one: (AXLES.index(one.read.axle), CASES.index(one.read.case))))


def _landings(compared: list[Compared | Landed]) -> tuple[Landed, ...]:
    return tuple(one for one in compared if isinstance(one, Landed))


def _compared(asked: Question, found: Adjusted) -> list[Compared | Landed]:
    made: list[Compared | Landed] = []
    for number, read in enumerate(asked.reads):
        expected, half = float(found.expected[number]), half_width(found.expected_draws[number])
        surprise = float(found.surprise[number])
        if isinstance(read, MarkRead):
            made.append(Landed(read=read, expected=-expected, expected_half=half, surprise=surprise))
        else:
            made.append(Compared(read=read, expected=expected + read.hanging, expected_half=half, surprise=surprise))
    return made


def _fields(asked: Question, found: Adjusted) -> dict[str, Resolved]:
    """The fields that the sags correct, and those that follow one."""
    job, learned = asked.job, dict(zip(asked.paths, found.learned, strict=True))
    best = at_normal(job, dict(zip(asked.paths, found.best[:, None], strict=True)), 1)
    draws = None
    if found.draws is not None:
        draws = at_normal(job, dict(zip(asked.paths, found.draws, strict=True)), found.draws.shape[1])
    changed = {path for path, ties in learned.items() if ties @ ties > _LEARNED}
    for path in best.samples:  # in the order that a value comes after the one it follows
        if not is_fit_off(path) and own_reading(job, path)[1] in changed:
            changed.add(path)
    made = {}
    for path in changed:
        was, ties = job.fields[path], learned.get(path, np.zeros(0))
        assert was.reading is not None
        half = 2.0 * was.reading.standard_uncertainty * float(1.0 - ties @ ties) ** 0.5
        reading = Reading(float(np.ravel(best.samples[path])[0]), half, was.reading.origin, Spread.NORMAL)
        samples = None if draws is None else np.asarray(draws.samples[path])
        made[path] = replace(was, reading=reading, samples=samples, learned=tuple(ties))
    return made


def _corrections(asked: Question, found: Adjusted, fields: Mapping[str, Resolved]) -> tuple[Correction, ...]:
    """Those worth telling: moved, or much narrowed."""
    made = []
    for row, path in enumerate(asked.paths):
        before, ties = asked.job.fields[path].reading, float(found.learned[row] @ found.learned[row])
        if path not in fields or before is None or ties < _LEARNED or path.endswith("hanging_length"):
            continue
        after = shown_reading(fields[path])
        # what is left of its spread by the slopes: against the +/- before it, draws of a reading with a limit are narrower anyway
        moved, narrowed = abs(float(found.best[row])), max(1.0 - ties, 0.0) ** 0.5
        if moved > TOLD or narrowed < NARROWED:
            made.append((ties, Correction(path, before, after, float(found.best[row]) / ties**0.5)))
    return tuple(one for _, one in sorted(made, key=lambda each: -each[0]))


def shown_reading(found: Resolved) -> Reading:
    """A corrected reading as it is told: its +/- is what 95 % of its draws lie within, where there are draws.

    Parameters: found, a corrected field.
    Returns: Reading.
    Raises: nothing.
    Formula: 95 % quantile of |draw - value|.
    Source: JCGM 101:2008, 5.3.4 (a coverage interval), taken symmetric.
    Example: see `tests/unit/uncertainty/test_corrected_bikes.py`.
    """
    reading = found.reading
    assert reading is not None
    if found.samples is None:
        return reading
    off = np.sort(np.abs(found.samples - reading.value))
    return replace(reading, plus_minus_95=float(off[min(int(0.95 * len(off)), len(off) - 1)]))
