"""The report: everything that the page and the command line show, of the types in `calc.report.types`.

`report`, `report_of` and `part_of` are loaded when they are asked for: the figures that the page shows first
(`calc.report.figures`) do without a third of the core, and a phone waits for what is imported.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from calc.practice import AXLES

if TYPE_CHECKING:
    from calc.report.whole import part_of, report, report_of

VERSION = 6
ENDS = AXLES

__all__ = ["ENDS", "VERSION", "part_of", "report", "report_of"]


def __getattr__(name: str) -> Any:
    """What is loaded late (PEP 562)."""
    if name not in ("part_of", "report", "report_of"):
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    from calc.report import whole

    return getattr(whole, name)
