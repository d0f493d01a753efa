"""How sure: the bands put beside the results, the count of draws, and what to measure next."""

from __future__ import annotations

from collections.abc import Mapping

from calc.impossible import decimals_apart
from calc.job import Job
from calc.practice import Axle
from calc.quantities.entry import convert
from calc.report.asking import asked
from calc.report.data import Data, number_text, with_half
from calc.report.words import answer_words, count_words, pressure_words, step_of, unsettled_words
from calc.sizing.choice import EndSizing
from calc.uncertainty.bands import Bands, Cause, bands
from calc.uncertainty.tolerance import BUILT_RATE

SETTLED = 5  # of ten draws: below this no single rate is told alone
FAR_APART = 1.5  # first order against draws
NEXT = 3  # readings to ask for
# Results that a reading is asked for, in order: name, words, unit, decimals.
_ASKED_FOR = (
    ("preload", "preload", "mm", 0),
    ("pressure", "pressure", "bar", 1),
    ("gap", "gap", "mm", 0),
    ("oil", "oil in the chamber", "ml", 0),
    ("second", "second volume's pressure", "bar", 1),
    ("rider", "rider sag", "mm", 0),
    ("free", "free sag", "mm", 0),
    ("end_multiple", "end force over load", "", 1),
)
_UNASKABLE = {"place.exponent"}  # no reading on a bench narrows it


def with_bands(job: Job, axle: Axle, data: Data, done: EndSizing) -> Data:
    """The report of an end with +/- on its results; as it was where no spring is chosen or no draw can be built."""
    sure = bands(job, axle, done)
    if sure is None:
        return data | {"sure": None, "measure_next": []}
    along = "stroke" if axle == "front" else "travel"
    chosen = _filled(data["chosen"], sure.figures, along)
    chosen |= _built(chosen, sure)
    step = step_of(chosen)
    found = data["as_found"]
    if found["setup"] is not None and sure.found:
        found = found | {"setup": _filled(found["setup"], sure.found, along)}
    candidates = [chosen if c["relation"] == "chosen" else c for c in data["candidates"]]
    counted = _counted(sure, step, chosen)
    span = None if counted["settled"] else (counted["low"], counted["high"])
    return (
        data
        | {
            "answer": answer_words(axle, chosen, chosen["oil"], data["leave"], span),
            "chosen": chosen,
            "candidates": candidates,
            "as_found": found,
            "load": {name: with_half(figure, sure.figures[name]) for name, figure in data["load"].items()},
            "moved": _moved(data["moved"], sure.found),
            "sure": counted,
            "measure_next": _measure_next(job, sure, along),
        }
        | _beside(data, sure)
    )


def _built(chosen: Data, sure: Bands) -> Data:
    """What is set, with the +/- that it has solved again with the spring held."""
    parts = {"preload": ("preload", 1.0), "gap": ("gap", 1.0), "pressure": ("pressure", 10.0), "air_oil": ("oil", 1e-3)}
    parts["second_pressure"] = ("second", 10.0)  # internal units to those shown
    set_to = {
        name: with_half(chosen[name], sure.setup[key] * factor)
        for name, (key, factor) in parts.items()
        if key in sure.setup and chosen.get(name) is not None
    }
    if not chosen["pressure"]:
        set_to["rate"] = with_half(chosen["rate"], BUILT_RATE * chosen["rate"]["value"])
    if chosen["oil"] is not None:
        set_to["oil"] = {leg: with_half(oil, sure.oil[leg] / 1000.0) for leg, oil in chosen["oil"].items()}
    return set_to


def _moved(moved: Data | None, halves: Mapping[str, float]) -> Data | None:
    if moved is None or not halves:
        return moved
    return {"height": with_half(moved["height"], halves["rise_travel"]), "along": with_half(moved["along"], halves["rise_stroke"])}


def _beside(data: Data, sure: Bands) -> Data:
    """Brake dive and the shock's motion with their +/-."""
    if data["motion"] is not None:
        average, fall = with_half(data["motion"]["average"], sure.figures["leverage"]), data["motion"]["fall"]
        return {"motion": data["motion"] | {"average": average, "fall": with_half(fall, 100.0 * sure.figures["leverage_fall"])}}
    if data["braking"] is not None and "dive" in sure.figures:
        return {"braking": data["braking"] | {"stroke": with_half(data["braking"]["stroke"], sure.figures["dive"])}}
    return {}


def _filled(setup: Data, halves: Mapping[str, float], along: str) -> Data:
    sources = {
        "free_sag": (f"free_{along}", 1.0),
        "rider_sag": (f"rider_{along}", 1.0),
        "frequency": ("frequency", 1.0),
        "wheel_rate": ("wheel_rate", 1.0),
        "end_force": ("end_force", 1e-3),
        "end_multiple": ("end_multiple", 1.0),
        "landing_energy": ("energy", 1e-3),
        "energy_per_mass": ("energy_per_mass", 1e-3),
    }
    return setup | {name: with_half(setup[name], halves[key] * factor) for name, (key, factor) in sources.items()}


def of_ten(counts: Mapping[float, int], draws: int) -> dict[float, int]:
    """Counts of draws as parts of ten that add up to ten where every draw chose: largest remainders."""
    total = round(10 * sum(counts.values()) / draws)
    exact = {rate: 10 * count / draws for rate, count in counts.items()}
    parts = {rate: int(share) for rate, share in exact.items()}
    by_remainder = sorted(exact, key=lambda rate: parts[rate] - exact[rate])
    for rate in by_remainder[: max(total - sum(parts.values()), 0)]:
        parts[rate] += 1
    return parts


def middle(counts: Mapping[float, int]) -> tuple[float, float]:
    """The rates [N/mm] between which the middle eight of ten draws choose."""
    ordered = [rate for rate in sorted(counts) for _ in range(counts[rate])]
    last = len(ordered) - 1
    return ordered[round(0.1 * last)], ordered[round(0.9 * last)]


def _counted(sure: Bands, chosen: float, setup: Data) -> Data:
    """Draws by what they choose: rates [N/mm], or pressures in bar."""
    by_step = {_shown(step, setup): count for step, count in sure.counts.items()}
    tenths = of_ten(by_step, sure.draws)
    counts = [{"rate": step, "count": count, "of_ten": tenths[step]} for step, count in by_step.items()]
    low, high = middle(by_step)
    settled = bool(setup["pressure"]) or tenths.get(chosen, 0) >= SETTLED
    undecided = sure.draws - sum(by_step.values())
    words = count_words(tenths, chosen) if settled else unsettled_words(low, high, chosen, undecided > 0)
    return {
        "draws": sure.draws,
        "left_out": sure.left_out,
        "undecided": undecided,
        "counts": sorted(counts, key=lambda c: -c["count"]),
        "settled": settled,
        "low": low,
        "high": high,
        "words": pressure_words(low, high, setup) if setup["pressure"] else words,
    }


def _shown(step: float, setup: Data) -> float:
    """A rate or pressure as the report's data holds it, so that the same one is the same number."""
    return float(f"{convert(step, 'MPa', 'bar'):.12g}") if setup["pressure"] else step


def _measure_next(job: Job, sure: Bands, along: str) -> list[Data]:
    """The readings that would narrow the results most: the greatest cause of each result in turn, each reading once."""
    asked_for: list[Data] = []
    for result, words, unit, decimals in _ASKED_FOR:
        name = f"{result}_{along}" if result in ("rider", "free") else result
        causes = [c for c in sure.causes.get(name, ()) if c.path not in _UNASKABLE] if _first_order_holds(sure, name) else []
        if causes and all(causes[0].path != a["path"] for a in asked_for):
            asked_for.append(_ask(job, causes[0], words, unit, decimals))
    return sorted(asked_for, key=lambda a: a["then"] / a["now"])[:NEXT]


def _first_order_holds(sure: Bands, name: str) -> bool:
    """The ranking is first order: where the draws say otherwise by half as much again, nothing is promised."""
    drawn = {**sure.figures, **sure.setup}.get(name)
    causes = sure.causes.get(name, ())
    return drawn is not None and bool(causes) and 1.0 / FAR_APART < causes[0].now / drawn < FAR_APART


def _ask(job: Job, cause: Cause, result: str, unit: str, decimals: int) -> Data:
    factor = {"bar": 10.0, "ml": 1e-3}.get(unit, 1.0)
    now, then = cause.now * factor, cause.then * factor
    places = decimals_apart(now, then, decimals)
    change = f"{result} ±{number_text(now, places)} becomes ±{number_text(then, places)} {unit}".rstrip()
    return {
        "path": cause.path,
        "result": result,
        "share": float(f"{cause.share:.3g}"),
        "now": float(f"{now:.3g}"),
        "then": float(f"{then:.3g}"),
        "unit": unit,
        "words": f"{asked(cause.path)}: {change}.",
        "how": job.fields[cause.path].field.how,
    }
