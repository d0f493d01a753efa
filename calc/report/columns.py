"""Plain-text tables whose columns never run together. Ours: a library for it would ship to the phone with the core."""

from __future__ import annotations

import textwrap
from collections.abc import Sequence

WIDTH = 100  # of a line that can be broken


def columns(heads: Sequence[str], rows: Sequence[Sequence[str]], left: int = 1) -> list[str]:
    """The first columns flush left, the others flush right, two spaces or more between them.

    Parameters: heads, one a column, a head may take several lines; rows of as many cells; left, how many stand flush left.
    Returns: lines.
    Raises: ValueError for a row of another length.
    Formula: none.
    Source: none.
    Example:
        >>> columns(["", "sag\\nmm"], [["front", "66"], ["rear", "104"]])
        ['         sag', '          mm', '  front   66', '  rear   104']
    """
    depth = max(head.count("\n") for head in heads) + 1
    split = [head.split("\n") for head in heads]
    titles = [[*[""] * (depth - len(head)), *head] for head in split]
    grid = [*zip(*titles, strict=True), *rows]
    widths = [max(map(len, column)) for column in zip(*grid, strict=True)]
    sides = [str.ljust if number < left else str.rjust for number in range(len(heads))]
    return [
        f"  {'  '.join(side(cell, width) for side, cell, width in zip(sides, row, widths, strict=True))}".rstrip() for row in grid
    ]


def wrapped(text: str, indent: str = "", first: str | None = None) -> list[str]:
    """A sentence over as many lines as it takes; `first` stands before the first."""
    return textwrap.wrap(text, WIDTH, initial_indent=indent if first is None else first, subsequent_indent=indent)
