"""The sheet of an oil's tin as data: what it says of the oil where the bike is started and where it is hot, and what to order."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, replace

from calc.gas.warm import OIL_EXPANSION
from calc.impossible import Impossible
from calc.job import Job
from calc.job.fields.oil_sheet import OIL_SHEET
from calc.oil.density import density_at
from calc.oil.index import viscosity_index
from calc.oil.mixing import mixed
from calc.oil.viscosity import COLD, HOT, ViscosityLine, line_through
from calc.report.oil_words import NOTE, sheet_words
from calc.report.quantity import quantity
from calc.report.types import OilChange, OilIndex, OilOrder, OilPoint, OilReport, Quantity
from calc.report.types.oil import When

TIN = 1e6  # mm3: a litre
_CASES: dict[When, str] = {"cold": "as warm as it was bled", "in use": "leg temperature in use", "hot": "fork when hot"}
# What else it is worked out from: a refused entry of these is said, and what rests on it is not told.
_TEMPERATURES = ("place.bled_temperature", "place.ridden_temperature", "conditions.hot_temperature")
_VOLUMES = ("front.air", "front.gap_from", "front.oil_volume", "front.filled_left", "front.filled_right")
_RESTS_ON = (*(field.path for field in OIL_SHEET), *_TEMPERATURES, *_VOLUMES)
_HALF_READ = "Enter the viscosity at 40 °C and at 100 °C both: one of them says nothing about the other."


@dataclass(frozen=True)
class _Oils:
    """The lines of what is entered; what is in the leg is the mix where there is one."""

    first: ViscosityLine | None
    second: ViscosityLine | None
    mix: ViscosityLine | None
    problem: str

    @property
    def filled(self) -> ViscosityLine | None:
        return self.mix or self.first


def oil_report(job: Job) -> OilReport | None:
    """The report of what is entered of an oil's sheet.

    Parameters: job.
    Returns: OilReport; None where nothing of it is entered.
    Raises: nothing. Formula: none. Source: none.
    Example: see `tests/unit/report/test_oil_report.py`.
    """
    if not any(job.fields[field.path].applies and job.fields[field.path].entered for field in OIL_SHEET):
        return None
    oils = _oils(job)
    temperatures = _temperatures(job)
    points, problem = [], oils.problem
    for when, (label, temperature) in temperatures.items():
        try:
            points.append(_point(job, oils, when, label, temperature))
        except Impossible as error:
            problem = problem or f"{label}: {error}"
    # Without a problem every temperature and volume that is asked for is there.
    change = _change(job, oils.filled, temperatures["cold"][1], temperatures["hot"][1]) if not problem else None
    legs = _legs(job)
    report = OilReport(
        problem=problem,
        points=tuple(points),
        index=OilIndex(*(_index(line) for line in (oils.first, oils.second, oils.mix))),
        change=change,
        legs=tuple(quantity(leg, "ml", "one leg, as read", 0, "mm3") for leg in legs),
        orders=tuple(_orders(job, oils, sum(legs))),
        words=(),
        note=NOTE,
    )
    return replace(report, words=sheet_words(job, report))


def _read(job: Job, path: str) -> float | None:
    """A field of the sheet where it applies and was taken."""
    return job.number(path) if job.fields[path].applies and job.entered(path) else None


def _oils(job: Job) -> _Oils:
    refused = next((found.problem for path in _RESTS_ON if (found := job.fields[path]).applies and found.problem), None)
    first, wrong = _line(job, "oil.viscosity_40", "oil.viscosity_100", "")
    second, wrong_too = _line(job, "oil.second_40", "oil.second_100", "Second oil: ")
    problem = wrong or wrong_too
    if refused is not None:
        problem = " ".join(part for part in (refused.message, refused.limit) if part)
    share = _read(job, "oil.second_share")
    both = first is not None and second is not None
    if both and share is None and not problem:
        problem = "Enter how much of the mix the second oil is, and the mix is told too."
    mix = mixed(first, second, share) if first is not None and second is not None and share is not None else None
    return _Oils(first, second, mix, problem)


def _line(job: Job, cold: str, hot: str, name: str) -> tuple[ViscosityLine | None, str]:
    """The line of an oil, or None and what stands in the way of it."""
    at_40, at_100 = _read(job, cold), _read(job, hot)
    if at_40 is None or at_100 is None:
        return None, "" if at_40 is None and at_100 is None else f"{name}{_HALF_READ}"
    try:
        return line_through(at_40, at_100), ""
    except Impossible as error:
        return None, f"{name}{error}"


def _temperatures(job: Job) -> dict[When, tuple[str, float]]:
    """Label and temperature [K]; a leg temperature in use only where it was entered, since it is else that of the start."""
    named: tuple[tuple[When, str, str], ...] = tuple(zip(_CASES, ("Cold start", "In use", "Hot"), _TEMPERATURES, strict=True))
    return {
        when: (label, job.number(path))
        for when, label, path in named
        if job.known(path) and (when != "in use" or job.entered(path))
    }


def _point(job: Job, oils: _Oils, when: When, label: str, temperature: float) -> OilPoint:
    case, density = _CASES[when], _read(job, "oil.density")

    def viscosity(line: ViscosityLine | None) -> Quantity | None:
        if line is None:
            return None
        value = float(line.at(temperature))
        return quantity(value, "mm²/s", case, 0 if value >= 99.95 else 1 if value >= 9.995 else 2)

    return OilPoint(
        when=when,
        label=label,
        temperature=quantity(temperature, "°C", case, 0, "K"),
        first=viscosity(oils.first),
        second=viscosity(oils.second),
        mix=viscosity(oils.mix),
        density=None if density is None else quantity(float(density_at(density, temperature)), "kg/m³", case, 0),
    )


def _index(line: ViscosityLine | None) -> Quantity | None:
    """None where it is not defined too: the words say so."""
    if line is None:
        return None
    try:
        return quantity(float(viscosity_index(line.at(COLD), line.at(HOT))), "", "viscosity index", 0)
    except Impossible:
        return None


def _change(job: Job, line: ViscosityLine | None, cold: float, hot: float) -> OilChange | None:
    if hot <= cold:
        return None
    case, density = "cold start to hot", _read(job, "oil.density")
    share = OIL_EXPANSION * (hot - cold)
    kept = 1.0 / (1.0 + share) if density is None else float(density_at(density, hot) / density_at(density, cold))
    thinner = None if line is None else quantity(float(line.at(cold) / line.at(hot)), "times", case, 1)
    legs = _legs(job)
    leg = sum(legs) / len(legs) if legs else job.number("front.oil_volume")
    return OilChange(
        thinner,
        quantity(100.0 * (1.0 - kept), "%", case, 1),
        quantity(leg, "ml", f"one leg, {'as read' if legs else 'assumed'}", 0, "mm3"),
        quantity(leg * share, "ml", f"{case}, one leg", 0, "mm3"),
    )


def _legs(job: Job) -> tuple[float, ...]:
    """Oil that goes into each leg [mm3], as it was read; none where nobody did, or where that was refused."""
    if any(job.fields[path].applies and job.fields[path].problem for path in _VOLUMES):
        return ()
    filled = [job.fields[path] for path in ("front.filled_left", "front.filled_right")]
    if filled[0].applies and job.entered("front.filled_left"):
        return tuple(job.number(one.field.path) for one in filled)
    if job.entered("front.oil_volume"):
        return (job.number("front.oil_volume"),) * 2
    return ()


def _orders(job: Job, oils: _Oils, total: float) -> Iterator[OilOrder]:
    """Tins of each oil for both legs."""
    if not total:
        return
    share = _read(job, "oil.second_share") if oils.mix is not None else None
    parts = [("Oil", total)] if share is None else [("First oil", total * (1.0 - share)), ("Second oil", total * share)]
    for name, volume in parts:
        tins = math.ceil(volume / TIN - 1e-9)
        if tins:
            yield OilOrder(
                name,
                quantity(volume, "ml", "both legs", 0, "mm3"),
                quantity(tins, "tins of 1 l" if tins > 1 else "tin of 1 l", "both legs", 0),
                quantity(max(tins * TIN - volume, 0.0), "ml", "left over", 0, "mm3"),
            )
