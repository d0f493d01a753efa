"""From bytes and text to job documents, the same way for page and command line: nothing that could hang or break the reader
gets as far as it, and nothing is lost on the way."""

from __future__ import annotations

import json
import math
import re
from collections.abc import Mapping
from typing import Any

from calc.job.document import parse_header, upgraded
from calc.job.shape import JobError

SEVERAL = "stanchion-jobs"
SEVERAL_VERSION = 1
LONGEST = 4_000_000  # bytes or characters; the largest job is a hundredth of this
MOST_BRACKETS = 1_000  # a job has under 300; each may open a level for the reader, whose stack is short in a browser
DEEPEST = 20  # levels, of a file with more brackets than that: several jobs have five
MOST_DIGITS = 15  # a browser keeps no more of a whole number
_BYTE_ORDER_MARK = "\ufeff"
_BRACKETS_OUTSIDE_TEXT = re.compile(r'"(?:[^"\\]|\\.)*+"?|[\[\]{}]', re.DOTALL)


def decode(data: bytes, name: str = "this") -> str:
    """The text of a file's bytes.

    Parameters: data, the bytes; one more than LONGEST is enough to read; name of where they came from, for the message.
    Returns: the text.
    Raises: JobError when there is too much of it or it is not UTF-8.
    Formula: none.
    Source: RFC 8259, 8.1: JSON between systems is UTF-8.
    Example:
        >>> decode(b"{}")
        '{}'
    """
    if len(data) > LONGEST:
        raise JobError(f"{name} is longer than {LONGEST} bytes, so it isn't a job.")
    try:
        return data.decode("utf-8")
    except UnicodeDecodeError as error:
        raise JobError(f"{name} is not JSON: it is not UTF-8 text ({error.reason} at byte {error.start})") from error


def read_json(text: str, name: str = "this") -> Any:
    """Read JSON.

    Parameters: text; name of where it came from, for the message.
    Returns: what the JSON holds. A number that no float holds, or of more than 15 digits, stays the text it is, so that its field
    refuses it in sight.
    Raises: JobError saying what is wrong with it.
    Formula: none.
    Source: RFC 8259; NaN and Infinity, which it does not know, are refused; a key that stands twice, which it leaves open, too;
    a byte-order mark is passed over, as its 8.1 allows.
    Example:
        >>> read_json('{"a": 1, "b": 1e999}')
        {'a': 1, 'b': '1e999'}
    """
    if len(text) > LONGEST:
        raise JobError(f"{name} is longer than {LONGEST} characters, so it isn't a job.")
    text = text.removeprefix(_BYTE_ORDER_MARK)
    if text.count("[") + text.count("{") > MOST_BRACKETS:
        _refuse_depth(text, name)
    try:
        return json.loads(text, parse_constant=_no_constant, parse_int=_whole, parse_float=_float, object_pairs_hook=_once)
    except JobError as error:
        raise JobError(f"{name} is no job: {error}") from error
    except (ValueError, RecursionError) as error:
        raise JobError(f"{name} is not JSON: {error}") from error


def read_jobs(text: str, name: str = "this") -> tuple[list[dict[str, Any]], list[str]]:
    """Read a file of one job or of several.

    Parameters: text; name of where it came from, for the message.
    Returns: the documents, as this version writes them, and a sentence for each of several that is no job.
    Raises: JobError when there is no job in it.
    Formula: none.
    Source: the job file's definition in `calc.job.document`.
    Example:
        >>> jobs, refused = read_jobs('{"format": "stanchion-job", "version": 1, "rider": {"mass": 80}}')
        >>> jobs[0]["version"], jobs[0]["rider"], refused
        (4, {'mass': 80}, [])
    """
    found = read_json(text, name)
    if not isinstance(found, Mapping) or found.get("format") != SEVERAL:
        parse_header(found)
        return [upgraded(found)], []
    if found.get("version") != SEVERAL_VERSION or not isinstance(found.get("jobs"), list):
        raise JobError(f"{name} says {SEVERAL}; version must be {SEVERAL_VERSION} and jobs a list of jobs.")
    jobs, refused = [], []
    for number, document in enumerate(found["jobs"], 1):
        try:
            parse_header(document)
            jobs.append(upgraded(document))
        except JobError as error:
            refused.append(f"Job {number} of {len(found['jobs'])}: {error}")
    if not jobs:
        raise JobError(" ".join(refused[:3]) or f"{name} holds no job.")
    return jobs, refused


def several(documents: list[dict[str, Any]]) -> dict[str, Any]:
    """Several jobs as one document, for one file."""
    return {"format": SEVERAL, "version": SEVERAL_VERSION, "jobs": documents}


def _refuse_depth(text: str, name: str) -> None:
    depth = 0
    for found in _BRACKETS_OUTSIDE_TEXT.finditer(text):
        sign = found[0]
        depth += 1 if sign in "[{" else -1 if sign in "]}" else 0
        if depth > DEEPEST:
            raise JobError(f"{name} is nested deeper than {DEEPEST} levels, so it isn't a job.")


def _no_constant(name: str) -> float:
    raise JobError(f"{name} is not a number that a job can hold")


def _whole(digits: str) -> int | str:
    return int(digits) if len(digits) <= MOST_DIGITS else digits


def _float(digits: str) -> float | str:
    number = float(digits)
    vanished = number == 0.0 and any(digit in "123456789" for digit in digits.lower().partition("e")[0])
    return number if math.isfinite(number) and not vanished else digits


def _once(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    made = dict(pairs)
    if len(made) < len(pairs):
        keys = [key for key, _ in pairs]
        twice = next(key for key in keys if keys.count(key) > 1)
        raise JobError(f"{twice[:60]!r} stands twice in one object. Keep one.")
    return made
