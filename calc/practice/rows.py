"""The table that a job reads: the judged ranges with their calibrated typical values."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from calc.practice.calibrated import TYPICAL
from calc.practice.general import Usual
from calc.practice.judged import JUDGED, Row, Triple
from calc.practice.uses import BETWEEN, USES

_INDEX = {use: index for index, use in enumerate(USES)}


def _calibrated(name: str, row: Row) -> Row:
    def cell(use: str, triple: Triple | None) -> Triple | None:
        typical = TYPICAL.get(use, {}).get(name)
        return triple if triple is None or typical is None else (*triple[:2], typical)

    return replace(row, by_use=tuple(cell(use, triple) for use, triple in zip(USES, row.by_use, strict=True)))


ROWS: Mapping[str, Row] = {name: _calibrated(name, row) for name, row in JUDGED.items()}


def listed(row: str, use: str) -> Usual | None:
    """A row's cell for a use, None where it is not practised; of a use between two others the confidence is L."""
    found = ROWS[row]
    triple = found.by_use[_INDEX[use]]
    if triple is None:
        return None
    if use in BETWEEN:
        note = f"judged between {' and '.join(USES[other].lower() for other in BETWEEN[use])}; common practice, no source"
        return Usual(*triple, found.unit, "L", note)
    return Usual(*triple, found.unit, found.confidence)
