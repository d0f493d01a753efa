"""What the shape of a job file is checked with: the error for what is no job, texts, and names that are not known."""

from __future__ import annotations

import difflib
from collections.abc import Iterable, Mapping
from typing import Any

MAX_TEXT = 2000


class JobError(ValueError):
    """A document that is not a job: nothing is read from it."""


def unknown_key(key: str, known: Iterable[str]) -> str:
    """What is said of a key that no job has."""
    near = difflib.get_close_matches(key, list(known), 1)
    return f"{key} is not a key of a job." + (f" Did you mean {near[0]}?" if near else "")


def checked_text(holder: Mapping[str, Any], key: str, name: str | None = None, most: int = MAX_TEXT) -> str:
    """A text, empty where there is none; JobError for anything else."""
    value = holder.get(key, "")
    if not isinstance(value, str) or len(value) > most:
        raise JobError(f"{name or key} must be text of at most {most} characters.")
    if any("\ud800" <= letter <= "\udfff" for letter in value):
        raise JobError(f"{name or key} contains half of a character, which cannot be shown or stored. Type it again.")
    return value
