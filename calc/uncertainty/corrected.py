"""What was found corrects a job's readings: sags, the mark of a landing, the points of a push, each beside what was expected."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np

from calc.array import Array
from calc.job import Job, Ranges, Resolved
from calc.model.draws import at_normal, is_fit_off, own_reading
from calc.model.observed import CASES, SagRead
from calc.practice import AXLES, Axle
from calc.quantities.reading import Reading, Spread
from calc.sizing.margins import moved_readings
from calc.uncertainty.adjustment import Adjusted
from calc.uncertainty.compared import DOUBTFUL, Compared, Found, Landed, Pushed, compared, kinds, without
from calc.uncertainty.push_points import correcting
from calc.uncertainty.question import Question
from calc.uncertainty.usable import usable

TOLD = 1.0  # standard uncertainties that a reading moves by, or
_EXACT = "There is nothing that these sags could be compared with: every reading is entered as exact, or the bike is at its limit."
_LEARNED = 1e-6  # of a reading's variance: less is nothing learned
NARROWED = 0.8  # of its +/- left: then its correction is told


@dataclass(frozen=True, eq=False)
class Correction:
    """What a reading was and what was found makes of it [its internal unit]; surprise [-] as in `Compared`."""

    path: str
    before: Reading
    after: Reading
    surprise: float


@dataclass(frozen=True, eq=False)
class SagsFound:
    """What the sags, marks and points of a push of a job say.

    Parameters: fields, the corrected ones by path; draws that these hold, 0 where they hold none; compared, the sags read;
    corrections, of what was learned most about first; refused, why an end's sags say nothing; landed, the marks; points, of the
    push; by, the kinds of readings that corrected; applied, whether the answer is to rest on that; push_refused, why a push
    corrects nothing.
    """

    fields: Mapping[str, Resolved]
    draws: int
    compared: tuple[Compared, ...]
    corrections: tuple[Correction, ...]
    refused: Mapping[Axle, str]
    landed: tuple[Landed, ...] = ()
    points: tuple[Pushed, ...] = ()
    by: tuple[str, ...] = ()
    applied: bool = False
    push_refused: str = ""

    def correct(self, job: Job) -> Job:
        """The job with its readings corrected, unless it says that what was found is only to be compared."""
        if not self.fields or not self.applied:
            return job
        return replace(job, fields={**job.fields, **self.fields}, draws=min(job.draws, self.draws or job.draws))


def sags_found(job: Job, with_draws: bool = True) -> SagsFound:
    """What was found of a job says about its readings, front and rear at once: sags, marks, the points of a push.

    Parameters: job, not drawn; with_draws, whether the corrected readings are drawn too, for whoever works out bands.
    Returns: SagsFound; the corrected values are the same either way, what is told of their +/- is the draws' where there are any.
    Raises: nothing.
    Formula: see `calc.uncertainty.adjustment`; a sag read twice counts with its mean, and half of what the two differ by as
    friction; one read once is unsure by the friction too. Of sags and push each may be only compared.
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
    believed, only_compared, applied, why = _weighed(fields, ranges, draws)
    found = replace(believed.told(with_draws), applied=applied, push_refused=why)
    if only_compared is None:
        return found
    beside = only_compared.told(False)
    return replace(found, compared=beside.compared, landed=beside.landed, refused=beside.refused)


@lru_cache(maxsize=4)
def _weighed(fields: tuple[Resolved, ...], ranges: Ranges, draws: int) -> tuple[Believed, Believed | None, bool, str]:
    """What is believed, before any draw: of all that may correct, of sags that are only compared beside a push that corrects;
    whether the answer rests on it; why a push corrects nothing.
    """
    job = Job({}, {found.field.path: found for found in fields}, ranges=ranges, draws=draws)
    reads, refused = usable(job)
    push, why = correcting(job)
    paths = tuple(path for path in moved_readings(job) if not is_fit_off(path))
    asked = Question(job, reads, paths, push, () if push is None else tuple(range(len(push.push.strokes))))
    correct = job.choice("bike.sags_correct") == "yes"
    if correct or push is None or not reads:
        return believed(asked, refused), None, correct or push is not None, why
    return believed(replace(asked, reads=()), {}), believed(Question(job, reads, paths), refused), True, why


def believed(first: Question, refused: Mapping[Axle, str]) -> Believed:
    """What fits is believed; what fits least is left out, as long as any fits nothing.

    Parameters: first, all that was found; refused, why an end's sags say nothing.
    Returns: Believed.
    Raises: nothing. Formula: least surprise, see `calc.uncertainty.adjustment`. Source: see there.
    Example: see `tests/unit/uncertainty/test_corrected.py`.
    """
    doubtful: list[Found] = []
    asked: Question | None = first if first.reads or first.points else None
    while asked is not None:
        found = asked.answered() if asked.paths else None
        if found is None:
            return Believed((), {**refused, **{read.axle: _EXACT for read in asked.reads if isinstance(read, SagRead)}})
        beside = list(compared(asked, found))
        least = max(beside, key=lambda one: abs(one.surprise))
        if abs(least.surprise) <= DOUBTFUL:
            return Believed((*doubtful, *beside), refused, asked, found)
        doubtful.append(replace(least, believed=False))
        asked = without(asked, least)
    return Believed(tuple(doubtful), refused)


@dataclass(frozen=True, eq=False)
class Believed:
    """All that was found, and of what is believed the question and its answer; none where nothing is."""

    every: tuple[Found, ...]
    refused: Mapping[Axle, str]
    asked: Question | None = None
    answer: Adjusted | None = None

    def told(self, with_draws: bool) -> SagsFound:
        """What that corrects, the corrected readings drawn or not."""
        asked, answer = self.asked, self.answer
        draws = answer.draws if answer is not None and with_draws else None
        fields = _fields(asked, answer, draws) if asked and answer else {}
        sags = [one for one in self.every if isinstance(one, Compared)]
        return SagsFound(
            fields,
            0 if draws is None else draws.shape[1],
            tuple(sorted(sags, key=lambda one: (AXLES.index(one.read.axle), CASES.index(one.read.case)))),
            _corrections(asked, answer, fields) if asked and answer else (),
            self.refused,
            tuple(one for one in self.every if isinstance(one, Landed)),
            tuple(sorted((one for one in self.every if isinstance(one, Pushed)), key=lambda one: one.point)),
            kinds(asked),
        )


def _fields(asked: Question, found: Adjusted, drawn: Array | None) -> dict[str, Resolved]:
    """The fields that what was found corrects, and those that follow one; what a push alone has stays its own."""
    job, learned = asked.job, dict(zip(asked.paths, found.learned, strict=False))
    best = at_normal(job, dict(zip(asked.paths, found.best[:, None], strict=False)), 1)
    draws = None
    if drawn is not None:
        draws = at_normal(job, dict(zip(asked.paths, drawn, strict=False)), drawn.shape[1])
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
