"""A customer's sheet as it was filled in: lines of a name, a colon and an answer, or JSON of answers by name or field."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from calc.job.questions import QUESTIONS
from calc.job.shape import JobError
from calc.job.text import read_json

_PATHS = {one.name: one.path for one in QUESTIONS if one.path}


def read_sheet(text: str) -> dict[str, Any]:
    """Read what a customer filled in.

    Parameters: text, lines or JSON.
    Returns: what was said, by field path, as typed.
    Raises: JobError for JSON that is no object, a line without a colon, or a name that is not asked.
    Formula: none.
    Source: none.
    Example:
        >>> read_sheet("riding: enduro\\nhanging: 62,5 cm\\nbike:")
        {'bike.use': 'enduro', 'rear.hanging_length': '62,5 cm', 'bike.mass': ''}
    """
    if text.lstrip()[:1] in ("{", "["):
        said = read_json(text)
        if not isinstance(said, Mapping):
            raise JobError("A customer's readings are a JSON object, or lines of a name, a colon and an answer.")
        return {_path(str(name)): value for name, value in said.items()}
    found = {}
    for number, line in enumerate(text.splitlines(), 1):
        if not line.strip() or line.lstrip().startswith("#"):
            continue
        name, colon, answer = line.partition(":")
        if not colon:
            raise JobError(f'line {number}: "{line.strip()[:40]}" has no colon; write a name, a colon and the answer.')
        found[_path(name.strip().lower())] = answer.strip()
    return found


def _path(name: str) -> str:
    if name in _PATHS:
        return _PATHS[name]
    if name in _PATHS.values():
        return name
    raise JobError(f"{name[:60]} is not asked of a customer. Asked are: {', '.join(_PATHS)}.")
