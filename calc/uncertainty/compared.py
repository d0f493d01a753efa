"""What was found beside what was expected: sags, the mark of a landing, the points of a push; what fits nothing is not believed."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from calc.model.draws import half_width
from calc.model.marks import MarkRead
from calc.model.observed import SagRead
from calc.uncertainty.adjustment import Adjusted
from calc.uncertainty.question import Question

DOUBTFUL = 3.0  # standard uncertainties: what fits nothing


@dataclass(frozen=True, eq=False, kw_only=True)
class Beside:
    """What was found, beside what was expected [mm, of a push N].

    Parameters: expected, before anything found was looked at, and expected_half, its 95 % half-width; surprise [-], what it is
    off by in the end over what that should scatter by; believed, False where that is too much.
    """

    expected: float
    expected_half: float
    surprise: float
    believed: bool = True


@dataclass(frozen=True, eq=False, kw_only=True)
class Compared(Beside):
    """One sag: `read`."""

    read: SagRead


@dataclass(frozen=True, eq=False, kw_only=True)
class Landed(Beside):
    """The mark of a landing: `read`, beside the most that it could be expected to be."""

    read: MarkRead


@dataclass(frozen=True, eq=False, kw_only=True)
class Pushed(Beside):
    """One point of a push: its number among them, its stroke [mm]."""

    point: int
    stroke: float


Found = Compared | Landed | Pushed


def compared(asked: Question, found: Adjusted) -> Iterator[Found]:
    """Everything that counts, beside what was expected of it.

    Parameters: asked; found, its answer.
    Returns: sags and marks in their order, then points.
    Raises: nothing. Formula: none. Source: none.
    Example: see `tests/unit/uncertainty/test_corrected.py`.
    """
    for number, read in enumerate(asked.reads):
        expected, half = float(found.expected[number]), half_width(found.expected_draws[number])
        surprise = float(found.surprise[number])
        if isinstance(read, MarkRead):
            yield Landed(read=read, expected=-expected, expected_half=half, surprise=surprise)
        else:
            yield Compared(read=read, expected=expected + read.hanging, expected_half=half, surprise=surprise)
    if asked.push is None:
        return
    for row, point in enumerate(asked.points, len(found.expected) - len(asked.points)):
        half = half_width(found.expected_draws[row])
        stroke = float(asked.push.push.strokes[point])
        yield Pushed(
            point=point, stroke=stroke, expected=float(found.expected[row]), expected_half=half, surprise=float(found.surprise[row])
        )


def without(asked: Question, one: Found) -> Question | None:
    """The question without what fits nothing.

    Parameters: asked; one, of what it holds.
    Returns: Question; None where nothing is left to ask by.
    Raises: nothing. Formula: none. Source: none.
    Example: see `tests/unit/uncertainty/test_corrected.py`.
    """
    points = tuple(point for point in asked.points if not isinstance(one, Pushed) or point != one.point)
    reads = tuple(read for read in asked.reads if isinstance(one, Pushed) or read is not one.read)
    left = Question(asked.job, reads, asked.paths, asked.push if points else None, points)
    return left if reads or points else None


def kinds(asked: Question | None) -> tuple[str, ...]:
    """Of what kinds the readings are that count.

    Parameters: asked, None for nothing.
    Returns: of "sags", "push" and "mark" those that it holds.
    Raises: nothing. Formula: none. Source: none.
    Example: see `tests/unit/uncertainty/test_push_points.py`.
    """
    if asked is None:
        return ()
    told = {
        "sags": any(isinstance(read, SagRead) for read in asked.reads),
        "push": bool(asked.points),
        "mark": any(isinstance(read, MarkRead) for read in asked.reads),
    }
    return tuple(kind for kind, has in told.items() if has)
