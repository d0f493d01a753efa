"""An oil's sheet as plain text for the command line: what the page shows."""

from __future__ import annotations

from calc.report.columns import columns, wrapped
from calc.report.types import OilReport, Quantity


def oil_lines(oil: OilReport | None) -> list[str]:
    """A row for each temperature, then the sentences."""
    if oil is None:
        return []
    shown = {
        "oil\nmm²/s": [point.first for point in oil.points],
        "second oil\nmm²/s": [point.second for point in oil.points],
        "mix\nmm²/s": [point.mix for point in oil.points],
        "density\nkg/m³": [point.density for point in oil.points],
    }
    kept = {head: cells for head, cells in shown.items() if any(cells)}
    rows = [
        [f"{point.label}, {point.temperature.text} °C", *(_text(cells[i]) for cells in kept.values())]
        for i, point in enumerate(oil.points)
    ]
    lines = ["Oil on the tin", "", *(wrapped(oil.problem, "  ", "  ") if oil.problem else [])]
    lines += columns(["", *kept], rows) if kept else []
    return [*lines, *(line for words in (*oil.words, oil.note) for line in wrapped(words, "  ", "  ")), ""]


def _text(figure: Quantity | None) -> str:
    return "" if figure is None else figure.text
