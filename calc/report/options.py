"""What an offer's options do on this bike, as data: figures with their +/-, changes against as found, and two by two."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, replace
from functools import lru_cache

import numpy as np

from calc.job import Job, Ranges, Resolved
from calc.job.offer import Offer
from calc.options.curves import SAME, Apart, curves_apart
from calc.options.setups import OptionAt, OptionBands, as_found, option_bands, options_at, results
from calc.practice import AXLES, Axle
from calc.report.options_words import between_words, end_words, setup_words
from calc.report.quantity import quantity, with_half
from calc.report.setups import Cases, setup_report
from calc.report.sized import fields_of, part, problem_of, sized
from calc.report.types import EndBetween, OptionBetween, OptionDone, OptionEnd, OptionFigures, OptionsReport, Quantity

_NOTE = (
    f"Two force curves count as the same where they are nowhere more than {100 * SAME:.0f} % apart, or {100 * SAME:.0f} % of the "
    "rider load where that is more, settled and ridden. Every option is worked out in the fork and shock that the job describes, a "
    "sealed cartridge as the option leaves it, built with the same care; springs and gas only. Damping is not in these figures: "
    "what the valving does is known from the bench and the ride."
)
_REFUSED = "An entry that this rests on is refused. Mend it first."


@dataclass(frozen=True, eq=False)
class _End:
    """All options at one end."""

    axle: Axle
    job: Job
    options: tuple[OptionAt, ...]
    found: OptionAt
    load: float
    cases: Cases
    bands: OptionBands | None


def options_report(job: Job, corrected: Job) -> OptionsReport | None:
    """What each option does.

    Parameters: job; corrected, the same as sags found correct it.
    Returns: OptionsReport; None where there is no offer, or no option in it.
    Raises: nothing.
    Formula: see `calc.options`.
    Source: see there.
    Example: see `tests/unit/report/test_options_report.py`.
    """
    offer = job.offer
    if offer is None or not offer.options:
        return None
    ends = [_end(corrected, axle, offer) for axle in AXLES]
    done = [end for end in ends if end is not None]
    if not done:
        return OptionsReport(_REFUSED, (), (), (), "")
    told = tuple(
        OptionDone(option.number, tuple(_option_end(end, end.options[i]) for end in done)) for i, option in enumerate(offer.options)
    )
    problem = _REFUSED if len(done) < len(ends) else ""
    return OptionsReport(problem, tuple(_option_end(end, end.found) for end in done), told, _betweens(offer, done), _NOTE)


def _end(job: Job, axle: Axle, offer: Offer) -> _End | None:
    entries = tuple(
        (tuple(option.setup.get(axle, {}).items()), option.cartridge if axle == "front" else "") for option in offer.options
    )
    return _worked_out(axle, fields_of(job, axle), job.ranges, job.draws, entries)


@lru_cache(maxsize=8)
def _worked_out(
    axle: Axle,
    fields: tuple[Resolved, ...],
    ranges: Ranges,
    draws: int,
    entries: tuple[tuple[tuple[tuple[str, Resolved], ...], str], ...],
) -> _End | None:
    """The options at an end; an end and setups that did not change are not worked out again."""
    done, _ = sized(axle, fields, ranges)
    if done is None:
        return None
    job = replace(part(fields, ranges), draws=draws)
    options = options_at(job, axle, done, [(dict(setup), cartridge) for setup, cartridge in entries])
    bands = option_bands(job, axle, done, options)
    return _End(axle, job, options, as_found(done), float(np.asarray(done.inputs.loads.aboard)), Cases.of(job, axle), bands)


def _option_end(end: _End, one: OptionAt) -> OptionEnd:
    halves = {} if end.bands is None else end.bands.own.get(one.number, {})
    if one.figures is None:
        assert one.problem is not None
        problem = problem_of(one.problem, end.axle)
        return OptionEnd(end.axle, one.stays, "", None, None, problem, end_words(end.axle, one.stays, "", None, None, problem))
    figures = _figures(end, _results(end, one), halves, "")
    change = None if one.stays or end.found.figures is None else _change(end, end.found, one)
    setup = setup_words(
        setup_report(one.setup, one.figures, end.cases), one.setup.gaps if end.axle == "front" else None, one.cartridge
    )
    return OptionEnd(
        end.axle, one.stays, setup, figures, change, None, end_words(end.axle, one.stays, setup, figures, change, None)
    )


def _change(end: _End, one: OptionAt, other: OptionAt) -> OptionFigures:
    """From one to the other, with the +/- of the difference; both have figures."""
    was, now = _results(end, one), _results(end, other)
    halves = {} if end.bands is None else end.bands.between.get((one.number, other.number), {})
    case = "against as found" if one.number == 0 else f"against option {one.number}"
    return _figures(end, {name: now[name] - was[name] for name in now}, halves, case)


def _results(end: _End, one: OptionAt) -> dict[str, float]:
    assert one.figures is not None
    return {name: float(np.asarray(value)) for name, value in results(end.job, one.assembly, one.figures).items()}


_SHOWN = {
    "free_sag": ("mm", 0, 1.0),
    "rider_sag": ("mm", 0, 1.0),
    "frequency": ("Hz", 2, 1.0),
    "end_force": ("kN", 2, 1e-3),
    "end_multiple": ("", 1, 1.0),
    "gas_share": ("%", 0, 100.0),
    "behind": ("bar", 1, 10.0),
}


def _figures(end: _End, values: Mapping[str, float], halves: Mapping[str, float], change: str) -> OptionFigures:
    cases = {
        "free_sag": end.cases.free,
        "rider_sag": end.cases.rider,
        "gas_share": f"of the force at full travel, {end.cases.working}",
        "behind": f"over the air outside, {end.cases.rider}",
    }

    def told(name: str) -> Quantity:
        unit, decimals, scale = _SHOWN[name]
        case = ", ".join(words for words in (change, cases.get(name, end.cases.working)) if words)
        half = None if name not in halves else halves[name] * scale
        return with_half(quantity(values[name] * scale, unit, case, decimals), half)

    return OptionFigures(
        free_sag=told("free_sag"),
        rider_sag=told("rider_sag"),
        frequency=told("frequency"),
        end_force=told("end_force"),
        end_multiple=told("end_multiple"),
        gas_share=told("gas_share") if end.axle == "front" else None,
        behind=told("behind") if "behind" in values else None,
    )


def _betweens(offer: Offer, ends: list[_End]) -> tuple[OptionBetween, ...]:
    """Each option against the first before it that rides the same, or else against the first."""
    found = []
    for other in range(1, len(offer.options)):
        pairs = [_between(offer, ends, one, other) for one in range(other)]
        can = [pair for pair in pairs if pair is not None]
        if can:
            found.append(next((pair for pair in can if pair.same), can[0]))
    return tuple(found)


def _between(offer: Offer, ends: list[_End], one: int, other: int) -> OptionBetween | None:
    """Two options; None where an end of either has no figures, so that nothing can be said of both."""
    rows = []
    for end in ends:
        first, second = end.options[one], end.options[other]
        if first.stays and second.stays:
            continue
        if first.figures is None or second.figures is None:
            return None
        apart = curves_apart(first.figures, second.figures, end.load)
        rows.append(_end_between(end, first, second, apart))
    if not rows:
        return None
    same = all(row.same for row in rows)
    told = OptionBetween(offer.options[one].number, offer.options[other].number, same, tuple(rows), (), "", ())
    return between_words(offer, offer.options[one], offer.options[other], told)


def _end_between(end: _End, one: OptionAt, other: OptionAt, apart: Apart) -> EndBetween:
    assert one.figures is not None
    along = end.axle == "front"
    at = one.figures.end.motion.stroke(apart.travel) if along else apart.travel
    return EndBetween(
        axle=end.axle,
        same=apart.same,
        apart=quantity(apart.force, "N", "at the wheel, the most over the travel", 0),
        at=quantity(at, "mm", "along the leg" if along else "vertical at the axle", 0),
        change=_change(end, one, other),
    )
