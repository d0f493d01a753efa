"""What the report says of springs of every kind: pairs, kinds, and what to do to spacer or collar."""

from __future__ import annotations

import numpy as np

from calc.end.assembly import ForkAssembly
from calc.end.figures import Figures
from calc.end.setup import Setup
from calc.impossible import decimals_apart
from calc.job import Job
from calc.model import free_sag_window, oil_to_add
from calc.model.airleg import has_coil, has_second
from calc.model.fitted import by_tester
from calc.model.limits import AS_SOLD, marked_as_sold
from calc.model.origins import preload_was_read
from calc.practice import Axle
from calc.report.quantity import number_text, plain_number, quantity, rate_text
from calc.report.types import Candidate, Legs, Seat
from calc.sizing.choice import EndSizing
from calc.sizing.rule import WITHIN
from calc.springs.fit import Fit


def spring_lines(job: Job, axle: Axle, chosen: Candidate, figures: Figures) -> list[str]:
    """What a rate stands for where the springs are not plain ones, and what their stops add."""
    kind, lines = job.choice(f"{axle}.spring_kind"), []
    if chosen.pressure:
        lines += [_air_line(job), *_pulled_in_line(figures), *_free_sag_line(job, chosen)]
        if not has_coil(job):
            return [*lines, *_rubber_lines(chosen, figures)]
    lines += _tester_lines(job, axle)
    if kind == "stacked":
        lines.append("The rate is the main spring's; the second one is kept, and works until it closes.")
    if kind == "nested":
        lines.append("The rate is the main spring's; the second one is kept, and joins later.")
    if kind == "progressive" and not chosen.fitted:
        lines.append("Same shape, other mean rate: an assumption. The spring you are sold may rise otherwise; measure it.")
    if kind == "progressive" and chosen.fitted:
        lines.append("The rate is the mean over your table.")
    return [*lines, *_rubber_lines(chosen, figures)]


def _tester_lines(job: Job, axle: Axle) -> list[str]:
    """What a tester's points say of the spring that is in; none where there are none."""
    points = by_tester(job, axle)
    if points is None:
        return []
    count, half = len(job.fields[f"{axle}.tester"].pairs), plain_number(float(f"{points.plus_minus_95:.1g}"))
    rate = f"{rate_text(points.rate)} ±{half} N/mm"
    line = f"By {count} points on the tester, what is in has {rate}; they lie {points.scatter:.1f} N off a line."
    lines = [line, *_worn_lines(job, axle, points.rate)]
    if not points.bent:
        return lines
    way = "stiffens" if points.stiffer > 0 else "softens"
    return [*lines, f"It {way} by {abs(points.stiffer):.0%} over them: enter it as a progressive spring.".replace("%", " %")]


def _worn_lines(job: Job, axle: Axle, tested: float) -> list[str]:
    """That springs are not what they were sold as, by more than springs of one marking differ at worst."""
    marked = marked_as_sold(job, axle)
    if marked is None or job.choice(AS_SOLD[axle]) != "as sold" or abs(tested / marked - 1.0) <= WORN:
        return []
    off, way = f"{abs(tested / marked - 1.0):.0%}".replace("%", " %"), "under" if tested < marked else "over"
    why = "worn, or not what it is marked" if tested < marked else "not what it is marked"
    return [f"That is {off} {way} the {rate_text(marked)} it was sold as: {why}. The choice goes by {rate_text(marked)}."]


def _rubber_lines(chosen: Candidate, figures: Figures) -> list[str]:
    """What the bump rubber adds; none where there is none."""
    with_rubber = chosen.landing_energy_rubber
    if with_rubber is None:
        return []
    without, with_ = chosen.landing_energy.text, with_rubber.text
    lines = [f"Landing energy {without} J without the bump rubber, {with_} J with it. The end force leaves it out."]
    if float(np.asarray(figures.end.rubber_wheel_force(figures.rider.travel))) > 0:
        lines.append("The bump rubber is touched at rider sag already: sags and frequency leave it out. Check its length.")
    return lines


# What is done at the seat of an air spring, in place of a spacer.
WORN = 0.05  # of the rate: springs of one marking differ by that at worst; common practice, no source
LEGS_ALIKE = 1.0  # mm of gap: legs are matched to that; common practice, no source
_AIR_SEAT = "Pump cold, wheel off the ground, to what the gauge shows with its hose on; work the leg a few times, read again."


def seat_of(job: Job, axle: Axle, done: EndSizing, setup: Setup) -> Seat:
    """What to do to spacer or collar from as found to the recommended preload, with the turns where the pitch is known; the
    preload alone where nobody read the one it came with.
    """
    fit = done.limits.fit
    assert fit is not None
    if setup.air is not None:
        stays = quantity(0.0, "mm", "spacer, per leg, as found to recommended, longer is +", 0)
        return Seat(stays, None, _AIR_SEAT)
    if not preload_was_read(job, axle):
        return Seat(None, None, unread_seat_words(axle, float(setup.preload)))
    move = float(np.asarray(fit.move(setup.rate, setup.preload)))
    turns = move / job.number(f"{axle}.pitch") if job.known(f"{axle}.pitch") else None
    what = "spacer, per leg" if axle == "front" else "collar, per shock"
    return Seat(
        quantity(move, "mm", f"{what}, as found to recommended, longer or further in is +", 0),
        None if turns is None else quantity(turns, "", "turns of the adjuster, further in is +", 1),
        seat_words(axle, move, turns, _as_long(fit, setup)),
    )


def _as_long(fit: Fit, setup: Setup) -> bool:
    """True where another spring is taken to be as long as the fitted one."""
    return not bool(fit.fitted(setup.rate)) and (fit.free is None or fit.fitted_free is None)


def seat_words(axle: Axle, move: float, turns: float | None, as_long: bool) -> str:
    """One sentence on spacer or collar; `as_long`: another spring, taken to be as long as the fitted one."""
    millimetres = number_text(abs(move), 0)
    turned = "" if turns is None else f", {number_text(abs(turns), 1)} turns"
    if millimetres == "0":
        text = "Spacers stay" if axle == "front" else "Collar stays"
    elif axle == "front":
        text = f"{'Add' if move > 0 else 'Cut'} {millimetres} mm {'of spacer' if move > 0 else 'off the spacer'}"
        text += "" if turns is None else f", or turn the adjuster {number_text(abs(turns), 1)} turns {'in' if move > 0 else 'out'}"
    else:
        text = f"Collar {millimetres} mm{turned} {'in' if move > 0 else 'out'}"
    return f"{text}, for a spring as long as the fitted one." if as_long else f"{text}."


def unread_seat_words(axle: Axle, preload: float) -> str:
    """One sentence on spacer or collar where the preload it came with was not read: how to come to the one wanted."""
    where = "the space it has at full extension" if axle == "front" else "its installed length at full extension"
    with_spacers = " with its spacers" if axle == "front" else ""
    return (
        f"Nobody read the preload it came with: set {number_text(preload, 0)} mm by the tape, "
        f"the spring's free length{with_spacers} less {where}."
    )


def _air_line(job: Job) -> str:
    """What an air spring's sizing keeps as found."""
    control = job.choice("front.air_end")
    parts = {"gap": "oil height", "oil": "main chamber", "second": "second volume"}
    kept = [words for name, words in parts.items() if name != control]
    if not has_second(job):
        kept.remove("second volume")
    filled = job.choice("front.balance_fill") if job.choice("front.balance") == "yes" else ""
    if filled == "valve":
        kept.append("balance chamber")
    coil = "; the coil beside it too" if has_coil(job) else ""
    port = " The balance chamber fills through its port." if filled == "port" else ""
    return f"Kept as found: {', '.join(kept[:-1])}{' and ' if kept[1:] else ''}{kept[-1]}{coil}.{port}"


def _pulled_in_line(figures: Figures) -> list[str]:
    """Where a balance chamber holds the leg in with no load on it, and what that means for the tape."""
    start = float(np.asarray(figures.end.struts[0][0].start))
    if start < 0.5:
        return []
    return [f"With the wheel off the ground the balance chamber pulls the leg in {start:.0f} mm: sags count from there."]


def _free_sag_line(job: Job, chosen: Candidate) -> list[str]:
    """Free sag outside its window, which an air spring's pressure cannot mend while rider sag is kept."""
    low, high = free_sag_window(job, "front")
    free = chosen.free_sag.value
    if low <= free <= high:
        return []
    side, limit = ("under", low) if free < low else ("over", high)
    decimals = decimals_apart(free, limit, 0)
    shown, window = number_text(free, decimals), f"{number_text(low, decimals)}-{number_text(high, decimals)}"
    cause = "its volumes decide that, not its pressure"
    if job.choice("front.balance") == "yes" and job.choice("front.balance_fill") == "valve":
        cause = "the balance chamber's pressure and the volumes decide that, not the main chamber's"
    return [f"Free sag {shown} mm is {side} the usual {window}: {cause}."]


def oil_of(job: Job, fork: ForkAssembly, setup: Setup) -> Legs:
    """Oil to add to each leg of a fork, from its own gap and spring as found to the new ones; none for less than `LEGS_ALIKE`."""
    gap = setup.gap - LEGS_ALIKE
    least = float(np.asarray(fork.gas.oil_to_add(setup.rate, setup.gap, setup.rate, gap))) * (1.0 + WITHIN)
    exact = {leg: float(np.asarray(oil)) for leg, oil in oil_to_add(job, fork, setup).items()}
    amounts = {leg: oil if abs(oil) > least else 0.0 for leg, oil in exact.items()}
    return Legs(**{leg: quantity(oil, "ml", f"{leg} leg", 0, "mm3") for leg, oil in amounts.items()})
