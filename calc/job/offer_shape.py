"""The shape of an offer in the job file: which keys it has, and of which kind their values are. What they say is read in
`calc.job.offer`.

{"currency": "EUR", "tax": "20 %", "tax_in_prices": true, "hourly": "65", "complaints": ["Harsh over roots"], "options": [
{"name": "...", "note": "", "setup": {"front": {"rate": "4.2", "preload": "5", "gap_left": "110", "gap_right": "110"}},
"parts": [{"what": "Fork oil, litre", "count": "2", "price": "18"}], "hours": "3.5", "answers": [1], "adjusters": "20 clicks",
"valving": "...", "service_hours": "50", "service_price": "90", "unknown": "..."}]}

A setup's keys are those of what is built (front.built_rate and so on), an end that is left out stays as it came in. Of a fork with
a sealed cartridge "cartridge" says how an option leaves it, "as built" or "opened into one"; left out, it stays in its state.
`answers` are the numbers of the complaints, from 1. Places are named with numbers from 1 too: offer.options[2].parts[1].price.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from types import MappingProxyType
from typing import Any

from calc.job.fields import FIELDS
from calc.job.shape import JobError, checked_text, unknown_key
from calc.practice import AXLES, Axle

MOST_OPTIONS, MOST_PARTS, MOST_COMPLAINTS = 12, 30, 12
MOST_LETTERS = 300  # of a line; a note takes more
BUILT = "built_"
SETUP_KEYS: Mapping[Axle, tuple[str, ...]] = MappingProxyType(
    {
        axle: tuple(field.key.removeprefix(BUILT) for field in FIELDS.values() if field.path.startswith(f"{axle}.{BUILT}"))
        for axle in AXLES
    }
)

CARTRIDGE, LEFT_AS = "cartridge", ("as built", "opened into one")

_Check = Callable[[Mapping[str, Any], str, str], None]


def check_offer(offer: object) -> None:
    """Check the shape of an offer; JobError naming the place and what it must be."""
    _check_object({"offer": offer}, "offer", "offer", _OFFER)


def _check_object(holder: Mapping[str, Any], key: str, name: str, kinds: Mapping[str, _Check]) -> None:
    held = holder[key]
    if not isinstance(held, Mapping):
        raise JobError(f"{name} must be an object of {', '.join(kinds)}.")
    for each in held:
        if each not in kinds:
            raise JobError(unknown_key(f"{name}.{each}", (f"{name}.{known}" for known in kinds)))
        kinds[each](held, each, f"{name}.{each}")


def _line(holder: Mapping[str, Any], key: str, name: str) -> None:
    checked_text(holder, key, name, MOST_LETTERS)


def _note(holder: Mapping[str, Any], key: str, name: str) -> None:
    checked_text(holder, key, name)


def _number(holder: Mapping[str, Any], key: str, name: str) -> None:
    value = holder[key]
    if value is None or (isinstance(value, (int, float)) and not isinstance(value, bool)):
        return
    if not isinstance(value, str):
        raise JobError(f"{name} must be a string or a number.")
    checked_text(holder, key, name, MOST_LETTERS)


def _yes_or_no(holder: Mapping[str, Any], key: str, name: str) -> None:
    if holder[key] not in (None, True, False) or type(holder[key]) in (int, float):
        raise JobError(f"{name} must be true or false.")


def _left_as(holder: Mapping[str, Any], key: str, name: str) -> None:
    if holder[key] not in (None, "", *LEFT_AS):
        raise JobError(f"{name} must be one of: {', '.join(LEFT_AS)}.")


def _list_of(check: _Check, most: int) -> _Check:
    def listed(holder: Mapping[str, Any], key: str, name: str) -> None:
        held = holder[key]
        if not isinstance(held, list):
            raise JobError(f"{name} must be a list.")
        if len(held) > most:
            raise JobError(f"{name} holds {len(held)}; there can be at most {most}.")
        for number, one in enumerate(held, 1):
            check({key: one}, key, f"{name}[{number}]")

    return listed


def _object_of(kinds: Mapping[str, _Check]) -> _Check:
    return lambda holder, key, name: _check_object(holder, key, name, kinds)


def _whole(holder: Mapping[str, Any], key: str, name: str) -> None:
    if type(holder[key]) is not int:
        raise JobError(f"{name} must be the number of a complaint, from 1.")


_PART: Mapping[str, _Check] = {"what": _line, "count": _number, "price": _number}
_NUMBERS: Mapping[Axle, Mapping[str, _Check]] = {axle: dict.fromkeys(keys, _number) for axle, keys in SETUP_KEYS.items()}
_SETUP: Mapping[str, _Check] = {
    "front": _object_of({**_NUMBERS["front"], CARTRIDGE: _left_as}),
    "rear": _object_of(_NUMBERS["rear"]),
}
_OPTION: Mapping[str, _Check] = {
    "name": _line,
    "note": _note,
    "setup": _object_of(_SETUP),
    "parts": _list_of(_object_of(_PART), MOST_PARTS),
    "hours": _number,
    "answers": _list_of(_whole, MOST_COMPLAINTS),
    "adjusters": _line,
    "valving": _line,
    "service_hours": _number,
    "service_price": _number,
    "unknown": _line,
}
_OFFER: Mapping[str, _Check] = {
    "currency": _line,
    "tax": _number,
    "tax_in_prices": _yes_or_no,
    "hourly": _number,
    "note": _note,
    "complaints": _list_of(_line, MOST_COMPLAINTS),
    "options": _list_of(_object_of(_OPTION), MOST_OPTIONS),
}
