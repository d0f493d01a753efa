"""A bench push as plain text for the command line: what the page draws."""

from __future__ import annotations

from calc.report.columns import columns, wrapped
from calc.report.quantity import banded_text
from calc.report.types import PushReport, Quantity

_READ = {"in": "pushed in", "out": "let out", "both": "the middle of in and out"}


def push_lines(push: PushReport | None) -> list[str]:
    """Verdict, what follows, each state with the gap that fits it, and what it misses each point by."""
    if push is None:
        return []
    lines = [f"Bench push, {_READ[push.read]}", "", *wrapped(push.verdict, "  ", "  ")]
    lines += [line for words in (*push.words, *push.corrects) for line in wrapped(words, "  ", "  ")]
    if push.refused:
        return [*lines, ""]
    states = [
        [rival.label, rival.chance.text, *(_text(one) for one in (rival.gap, rival.gap_now, rival.moved, rival.friction))]
        for rival in push.rivals
    ]
    heads = ["", "in 100", "gap that\nfits mm", "it shows\nnow mm", "oil out\nml", "friction\nN"]
    lines += ["", *columns(heads, states, left=1)]
    missed = [
        [f"{point.stroke.text} mm, {point.force.text} N", *(rival.residuals[i].text for rival in push.rivals)]
        for i, point in enumerate(push.points)
    ]
    lines += columns(["read less expected, N", *(rival.label.replace(" ", "\n", 1) for rival in push.rivals)], missed, left=1)
    return [*lines, *(wrapped(push.note, "  ", "  ") if push.note else []), ""]


def _text(figure: Quantity | None) -> str:
    return "" if figure is None else banded_text(figure)
