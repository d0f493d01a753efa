"""How the shock follows the wheel, in the report: a small table, where the points stand, and what was left of the pairs."""

from __future__ import annotations

from types import MappingProxyType

import numpy as np

from calc.job import Job
from calc.model.motion import fitted_pairs
from calc.motion.linkage import LinkageMotion
from calc.motion.ratio import Motion
from calc.report.quantity import number_text, quantity
from calc.report.types import Fit, LinkageView, MotionReport, MotionRow, Residual

ROWS = 7  # heights in the table
LEFT_OUT = "Left out: chain pull, and with it what the swingarm's angle does under drive."
_KNOWN = {
    "leverage": "From the average leverage and its fall, the ratio taken as a straight line over travel.",
    "points": "From the points of the linkage, its loop closed at every height.",
    "table": "From a table taken as exact, a smooth curve through every row.",
}


def motion_report(job: Job, motion: Motion, rider_sag: float) -> MotionReport:
    """Travel, stroke, leverage; where points are known, the side view hanging, at rider sag and at full travel."""
    full = job.number("rear.travel")
    travel = np.linspace(0.0, full, ROWS)
    return MotionReport(
        known_from=job.choice("rear.motion_from"),
        words=_words(job),
        left_out=LEFT_OUT,
        rows=tuple(
            MotionRow(
                quantity(z, "mm", "vertical at the axle", 0),
                quantity(motion.stroke(float(z)), "mm", "at the shock, from hanging", 1),
                quantity(1.0 / motion.ratio(float(z)), "", "wheel / shock, at this height", 2),
            )
            for z in travel
        ),
        average=quantity(full / motion.stroke(full), "", "wheel / shock, over the whole travel", 2),
        fall=quantity(100.0 * (1.0 - motion.ratio(0.0) / motion.ratio(full)), "%", "of the leverage, hanging to full travel", 0),
        fit=_fit(job),
        views=tuple(_view(motion, at, z) for at, z in _cases(rider_sag, full)) if isinstance(motion, LinkageMotion) else (),
    )


def _cases(rider_sag: float, full: float) -> tuple[tuple[str, float], ...]:
    return ("hanging", 0.0), ("at rider sag", rider_sag), ("at full travel", full)


def _view(motion: LinkageMotion, at: str, travel: float) -> LinkageView:
    points = {name: (round(float(x), 2) + 0.0, round(float(z), 2) + 0.0) for name, (x, z) in motion.points(travel).items()}
    return LinkageView(
        at,
        quantity(travel, "mm", "vertical at the axle", 0),
        quantity(motion.length(travel), "mm", "eye to eye", 1),
        MappingProxyType(points),
        tuple(motion.bars),
    )


def _fit(job: Job) -> Fit | None:
    if job.choice("rear.motion_from") != "pairs":
        return None
    pairs = job.fields["rear.pairs"].pairs
    fit = fitted_pairs(pairs)
    residuals = (
        Residual(quantity(z, "mm", "vertical at the axle", 0), quantity(off, "mm", "length read less fitted", 2))
        for (z, _), off in zip(pairs, fit.residuals, strict=True)
    )
    return Fit(quantity(fit.scatter, "mm", "standard deviation of the lengths about the fit", 2), tuple(residuals))


def _words(job: Job) -> str:
    known = job.choice("rear.motion_from")
    if known != "pairs":
        return _KNOWN[known]
    pairs = job.fields["rear.pairs"].pairs
    fit = fitted_pairs(pairs)
    scatter, shape = number_text(fit.scatter, 2), number_text(abs(fit.shape), 2)
    return (
        f"From {len(pairs)} measured pairs, a quadratic fitted to them: they scatter by {scatter} mm, and it misses {shape} mm of "
        "their shape at either end. The ± counts both."
    )
