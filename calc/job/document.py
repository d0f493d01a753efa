"""The job file: its header, its version, its objects and keys. JSON in, checked before anything is read from it.

A field stands in its group's object as {"value": "96.2 kg", "plus_minus_95": "1 kg", "origin": "measured", "note":
"..."}; value may be a number in the field's unit; a bare string or number is short for a stated value. Every object
may hold a `note`. A `practice` object holds the user's own ranges by row, in place of the trade's, a `work` object the ticks of
`calc.job.work`. Unknown keys are refused, so that a slip of the pen is not silently ignored.

Version 2 knows the owner; version 3 calls `conditions` what stood under `elsewhere`; version 4 knows the `offer` and the
`work` done. Older files are read as they are;
`upgraded` writes them as this version would. The shape of an `offer` stands in `calc.job.offer_shape`.
Several jobs stand in one file as {"format": "stanchion-jobs", "version": 1, "jobs": [...]} (`calc.job.text`).
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import Any

from calc.job.fields import FIELDS, GROUPS
from calc.job.offer_shape import check_offer
from calc.job.shape import JobError, checked_text, unknown_key
from calc.job.work import WORK, work_problem
from calc.practice import GENERAL, ROWS

FORMAT = "stanchion-job"
VERSION = 4
RANGE_KEYS = ("low", "high", "typical", "note")
HEADER = ("format", "version", "name", "owner", "date", "invented", "note")
ENTRY_KEYS = ("value", "plus_minus_95", "origin", "note")
ORIGINS = ("measured", "stated", "assumed")
RENAMED = {"elsewhere": "conditions"}  # groups of files before version 3
KEYS = {group: tuple(field.key for field in FIELDS.values() if field.group == group) for group in GROUPS}


def parse_header(document: object) -> dict[str, Any]:
    """Check a document's shape and give its header.

    Parameters: document, what a JSON reader returned.
    Returns: the header's keys: format, version, name (the bike), owner, date, invented, note.
    Raises: JobError naming the key and what it must be.
    Formula: none.
    Source: the job file's definition, above.
    Example:
        >>> parse_header({"format": "stanchion-job", "version": 1, "name": "A"})["name"]
        'A'
    """
    if not isinstance(document, Mapping):
        raise JobError("A job is a JSON object.")
    if document.get("format") != FORMAT:
        raise JobError(f'format must be "{FORMAT}"; this file says {_quote(document.get("format"))}.')
    version = document.get("version")
    if not isinstance(version, int) or isinstance(version, bool) or version < 1:
        raise JobError(f"version must be a whole number from 1; this file says {_quote(version)}.")
    if version > VERSION:
        raise JobError(
            f"This job was written by a newer version ({version}); this one reads up to {VERSION}. Update, then open it."
        )
    _check_keys(_renamed(document))
    return {
        "format": FORMAT,
        "version": VERSION,
        "name": checked_text(document, "name"),
        "owner": checked_text(document, "owner"),
        "date": checked_text(document, "date"),
        "invented": _flag(document, "invented"),
        "note": checked_text(document, "note"),
    }


def upgraded(document: Mapping[str, Any]) -> dict[str, Any]:
    """A checked document as this version writes it: what an older one did not know is there and empty.

    Parameters: document, one that `parse_header` has taken.
    Returns: a document of this version; entries as they stand.
    Raises: nothing.
    Formula: none.
    Source: the job file's definition, above.
    Example:
        >>> upgraded({"format": "stanchion-job", "version": 1, "rider": {"mass": 80}})["rider"]
        {'mass': 80}
    """
    plain: dict[str, Any] = dict.fromkeys(("name", "owner", "date"), "") | {"invented": False, "note": ""}
    kept = {k: v for k, v in _renamed(document).items() if k not in ("format", "version")}
    return {"format": FORMAT, "version": VERSION} | plain | kept


def _renamed(document: Mapping[str, Any]) -> Mapping[str, Any]:
    """A document's groups by the names of this version. Where both names stand, the old one is left to be refused."""
    old = RENAMED if document["version"] < 3 else {}
    return {new if (new := old.get(key)) and new not in document else key: value for key, value in document.items()}


def entries(document: Mapping[str, Any]) -> dict[str, Mapping[str, Any]]:
    """Every field entry of a checked document, by path; shorthand written out."""
    found: dict[str, Mapping[str, Any]] = {}
    document = _renamed(document)
    for path, field in FIELDS.items():
        entry = document.get(field.group, {}).get(field.key)
        if entry is None:
            continue
        if isinstance(entry, Mapping):
            if entry.get("value") is not None:
                found[path] = entry
        else:
            found[path] = {"value": entry, "origin": "stated"}
    return found


def _check_keys(document: Mapping[str, Any]) -> None:
    for key, group in document.items():
        if key in HEADER:
            continue
        if key in _OWN_SHAPES:
            _OWN_SHAPES[key](group)
            continue
        if key not in GROUPS:
            raise JobError(unknown_key(key, (*HEADER, *GROUPS, *_OWN_SHAPES)))
        if not isinstance(group, Mapping):
            raise JobError(f"{key} must be an object of fields.")
        keys = KEYS[key]
        for name, entry in group.items():
            if name == "note":
                checked_text(group, "note", f"{key}.note")
            elif name not in keys:
                raise JobError(unknown_key(f"{key}.{name}", tuple(f"{key}.{k}" for k in keys)))
            else:
                _check_entry(f"{key}.{name}", entry)


def _check_work(work: object) -> None:
    wrong = work_problem(work)
    if wrong or not isinstance(work, Mapping):
        raise JobError(wrong)
    checked_text(work, "note", f"{WORK}.note")


def _check_ranges(group: object) -> None:
    rows = (*ROWS, *GENERAL)
    if not isinstance(group, Mapping):
        raise JobError("practice must be an object of ranges.")
    for row, entry in group.items():
        if row == "note":
            checked_text(group, "note", "practice.note")
        elif row not in rows:
            raise JobError(unknown_key(f"practice.{row}", tuple(f"practice.{r}" for r in rows)))
        elif not isinstance(entry, Mapping) or any(key not in RANGE_KEYS for key in entry):
            raise JobError(f"practice.{row} must be an object of {', '.join(RANGE_KEYS)}.")
        else:
            for key in ("low", "high", "typical"):
                if isinstance(entry.get(key), bool) or not isinstance(entry.get(key), (str, int, float, type(None))):
                    raise JobError(f"practice.{row}.{key} must be a string or a number.")


_OWN_SHAPES: Mapping[str, Callable[[object], None]] = {"practice": _check_ranges, WORK: _check_work, "offer": check_offer}


def _check_entry(path: str, entry: object) -> None:
    if entry is None or (isinstance(entry, (str, int, float)) and not isinstance(entry, bool)):
        return
    if not isinstance(entry, Mapping):
        raise JobError(f'{path} must be a string, a number, or an object with "value".')
    for key, value in entry.items():
        if key not in ENTRY_KEYS:
            raise JobError(unknown_key(f"{path}.{key}", tuple(f"{path}.{k}" for k in ENTRY_KEYS)))
        if key == "origin" and value not in ORIGINS:
            raise JobError(f"{path}.origin must be one of {', '.join(ORIGINS)}; this file says {_quote(value)}.")
        if value is not None and (isinstance(value, bool) or not isinstance(value, (str, int, float))):
            raise JobError(f"{path}.{key} must be a string or a number.")
    checked_text(entry, "note", f"{path}.note")


def _flag(holder: Mapping[str, Any], key: str) -> bool:
    value = holder.get(key, False)
    if not isinstance(value, bool):
        raise JobError(f"{key} must be true or false.")
    return value


def _quote(value: object) -> str:
    return "nothing" if value is None else repr(value)[:60]
