"""From text to a JSON document: nothing that could hang or break the reader gets as far as it."""

from __future__ import annotations

import json
from typing import Any

from calc.job.document import JobError

LONGEST = 1_000_000  # characters; the largest job is a twentieth of this
MOST_BRACKETS = 1_000  # a job has under 300; each opens a level for the reader, whose stack is short in a browser


def read_json(text: str, name: str = "this") -> Any:
    """Read JSON.

    Parameters: text; name of where it came from, for the message.
    Returns: what the JSON holds.
    Raises: JobError saying what is wrong with it.
    Formula: none.
    Source: RFC 8259; NaN and Infinity, which it does not know, are refused.
    Example:
        >>> read_json('{"a": 1}')
        {'a': 1}
    """
    if len(text) > LONGEST:
        raise JobError(f"{name} is longer than {LONGEST} characters, so it isn't a job.")
    if text.count("[") + text.count("{") > MOST_BRACKETS:
        raise JobError(f"{name} opens more than {MOST_BRACKETS} brackets, so it isn't a job.")
    try:
        return json.loads(text, parse_constant=_no_constant)
    except (ValueError, RecursionError) as error:  # ValueError: not JSON, or a number of absurd length
        raise JobError(f"{name} is not JSON: {error}") from error


def _no_constant(name: str) -> float:
    raise JobError(f"{name} is not a number that a job can hold")
