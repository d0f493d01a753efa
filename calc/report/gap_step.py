"""What a step of the gap does, as data and in a sentence of its own figures."""

from __future__ import annotations

from calc.conditions.gap_step import GapStep, gap_step
from calc.end.figures import Figures
from calc.end.setup import Setup
from calc.report.quantity import figure_text, quantity, size_text
from calc.report.types import GapStepReport, Quantity
from calc.sizing.choice import EndSizing


def gap_step_report(done: EndSizing, setup: Setup) -> GapStepReport | None:
    """The step of a setup; None where it has no gap or no figures."""
    found = gap_step(done.inputs, setup)
    return None if found is None else _told(found)


def _told(found: GapStep) -> GapStepReport:
    step = quantity(found.step, "mm", "less gap, both legs", 0)
    oil = quantity(found.oil, "ml", "into each leg", 0, "mm3")
    before, after = found.before, found.after
    gas = _gas(before, "with the gap as it is")
    if after is None:
        assert found.problem is not None
        more = f"{figure_text(step)} less gap is {figure_text(oil)} more oil in each leg"
        words = f"{more}, and no longer works: {found.problem.message}"
        return GapStepReport(step, oil, gas, None, None, None, words)
    force = quantity(100.0 * (after.end_force / before.end_force - 1.0), "%", "force at full travel", 0)
    sag = quantity(after.rider.stroke - before.rider.stroke, "mm", "rider sag, along the leg", 0)
    gas_after = _gas(after, "with the smaller gap")
    return GapStepReport(step, oil, gas, force, sag, gas_after, _words(step, oil, gas, force, sag, gas_after))


def _words(step: Quantity, oil: Quantity, gas: Quantity, force: Quantity, sag: Quantity, gas_after: Quantity) -> str:
    moved = f"{size_text(sag)} mm {'less' if sag.value < 0 else 'more'} rider sag"
    sags = moved if float(size_text(sag)) else "the same rider sag to the millimetre"
    return (
        f"{figure_text(step)} of gap is {figure_text(oil)} in each leg. That much less gap gives "
        f"{size_text(force)} % {'more' if force.value > 0 else 'less'} force at full travel and {sags}; "
        f"the gas then carries {figure_text(gas_after)} of that force, now {figure_text(gas)}."
    )


def _gas(done: Figures, case: str) -> Quantity:
    share = done.end.gas_wheel_force(done.end.travel, done.process) / done.end_force
    return quantity(100.0 * share, "%", f"of the force at full travel, {case}", 0)
