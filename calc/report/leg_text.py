"""The fork in section as plain text: what the page draws, for the command line."""

from __future__ import annotations

from collections.abc import Iterator

from calc.report.columns import columns, wrapped
from calc.report.quantity import number_text
from calc.report.types import DrawnLeg, LegSpace, Section

ROWS = 6  # steps of the stroke that are told


def leg_lines(section: Section | None) -> list[str]:
    """Oil, gas and pressure of each leg along its stroke, and where it stops; none where there is no fork to draw."""
    if section is None:
        return []
    lines = [""]
    for leg in section.legs:
        lines += [f"  {_name(leg)}, gap {number_text(leg.gap, 0)} mm {section.gap_words}; bar over outside, gas {section.process}:"]
        lines += columns(["mm", "oil under\nthe rim mm", *_heads(leg)], list(_rows(section, leg)), left=0)
    return [*lines, *(line for event in section.events for line in wrapped(event.words, "    ", "  "))]


def _name(leg: DrawnLeg) -> str:
    return leg.side[0].upper() + leg.side[1:]


def _heads(leg: DrawnLeg) -> Iterator[str]:
    for space in leg.spaces:
        name = "gas" if space is leg.spaces[0] else space.name
        yield from ([f"{name}\nml"] if space.volume else [])
        yield f"{name}\nbar"


def _rows(section: Section, leg: DrawnLeg) -> Iterator[list[str]]:
    for i in range(0, len(section.stroke), max(len(section.stroke) // ROWS, 1)):
        cells = (cell for space in leg.spaces for cell in _cells(space, i))
        yield [number_text(section.stroke[i], 0), number_text(leg.spaces[0].bottom[i], 0), *cells]


def _cells(space: LegSpace, i: int) -> Iterator[str]:
    if space.volume:
        yield number_text(space.volume[i], 0)
    yield number_text(space.pressure[i], 1)
