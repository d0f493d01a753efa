"""The edge: text that a person typed becomes one finite number in internal units, and back.

Raw text never reaches pint: it reads "4,4 N/mm" as 44, accepts nan and 1e400, and can hang on "9**9**9". A small
reader takes one number and one unit of an allow-list. Units convert along straight lines: those of `calc.quantities.lines`, or
where one is missing there, as pint works it out with a registry of just these units.
"""

from __future__ import annotations

import math
import re
import unicodedata
from collections.abc import Mapping
from dataclasses import dataclass
from functools import lru_cache

from calc.quantities.grouped import meanings
from calc.quantities.lines import LINES
from calc.quantities.units import ALIASES, AMBIGUOUS, DEFINITIONS, DIMENSIONS

MAX_CHARACTERS = 40
_NUMBER = re.compile(r"([+-]?)([0-9]+(?:[.,][0-9]*)?|[.,][0-9]+)(?:[eE]([+-]?[0-9]{1,4}))?")
_PAIR = re.compile(rf"{_NUMBER.pattern} ?/ ?{_NUMBER.pattern}(?: ?[^0-9]*)?")
_STONE = re.compile(r"([0-9]{1,3}) ?(?:st|stone) ?([0-9]{1,2}(?:[.,][0-9]+)?) ?(?:lb|lbs)?")
_SIGNS = str.maketrans({"−": "-", "º": "°", "˚": "°", "℃": "°C", "℉": "°F", "″": '"', "′": "'", "’": "'"})  # other keyboards


class EntryError(ValueError):
    """A refused entry: what is wrong, and where text can be read in more than one way, the readings on offer."""

    def __init__(self, code: str, message: str, readings: tuple[str, ...] = ()) -> None:
        super().__init__(message)
        self.code = code
        self.message = message
        self.readings = readings


@dataclass(frozen=True)
class Entry:
    """One number as it was entered, with the unit it was entered in."""

    number: float
    unit: str


@lru_cache(maxsize=1)
def pint_lines() -> Mapping[str, tuple[float, float]]:
    """Slope and offset of every unit towards its internal unit, as pint works them out.

    Returns: by unit, (slope, offset).
    Raises: nothing.
    Formula: internal = slope x unit + offset.
    Source: pint, on the definitions of `calc.quantities.units`.
    Example:
        >>> pint_lines()["in"]
        (25.4, 0.0)
    """
    from pint import UnitRegistry  # here, since what is in `calc.quantities.lines` can do without it

    registry: UnitRegistry[float] = UnitRegistry(None, cache_folder=None)
    registry.load_definitions(list(DEFINITIONS))

    def line(unit: str, to: str) -> tuple[float, float]:
        zero, hundred = (float(registry.Quantity(number, unit).to(to).magnitude) for number in (0.0, 100.0))
        return (hundred - zero) / 100.0, zero

    return {unit: line(name, d.units[d.internal]) for d in DIMENSIONS.values() for unit, name in d.units.items()}


@lru_cache(maxsize=512)
def _line(unit: str, to: str) -> tuple[float, float]:
    (slope, offset), (to_slope, to_offset) = (LINES.get(name) or pint_lines()[name] for name in (unit, to))
    return slope / to_slope, (offset - to_offset) / to_slope


def convert(number: float, unit: str, to: str) -> float:
    """Convert a number between two units of one dimension.

    Parameters: number [unit], any finite value or array; unit, to: names of `calc.quantities.units.DIMENSIONS`.
    Returns: the same quantity in `to`.
    Raises: EntryError when the units differ in dimension.
    Formula: to = slope x unit + offset, by way of the dimension's internal unit.
    Source: NIST SP 811 factors (exact definitions), `calc.quantities.lines`.
    Example:
        >>> round(convert(1.0, "kgf/mm", "N/mm"), 5)
        9.80665
    """
    if dimension_of(unit) != dimension_of(to):
        raise EntryError("dimension", f"{unit} cannot be turned into {to}")
    slope, offset = _line(unit, to)
    return slope * number + offset


def convert_difference(number: float, unit: str, to: str) -> float:
    """Convert a difference, such as a +/-: the slope without the offset.

    Parameters: number [unit], any finite value; unit, to as in `convert`.
    Returns: the difference in `to`.
    Raises: EntryError when the units differ in dimension.
    Formula: to = slope x unit.
    Source: as `convert`.
    Example:
        >>> convert_difference(3.0, "°C", "K")
        3.0
    """
    if dimension_of(unit) != dimension_of(to):
        raise EntryError("dimension", f"{unit} cannot be turned into {to}")
    return _line(unit, to)[0] * number


@lru_cache(maxsize=64)
def dimension_of(unit: str) -> str:
    """Name the dimension a unit belongs to.

    Parameters: unit, a name of `calc.quantities.units.DIMENSIONS`.
    Returns: the dimension's name.
    Raises: EntryError for an unknown unit.
    Formula: look-up.
    Source: `calc.quantities.units`.
    Example:
        >>> dimension_of("N/mm")
        'spring rate'
    """
    for name, dimension in DIMENSIONS.items():
        if unit in dimension.units:
            return name
    raise EntryError("unit", f"{unit!r} is not a unit known here")


def internal_unit(dimension: str) -> str:
    """Give the internal unit of a dimension.

    Parameters: dimension, a key of `calc.quantities.units.DIMENSIONS`.
    Returns: the unit that the core computes in.
    Raises: KeyError for an unknown dimension.
    Formula: look-up.
    Source: `calc.quantities.units`.
    Example:
        >>> internal_unit("pressure")
        'MPa'
    """
    return DIMENSIONS[dimension].internal


@lru_cache(maxsize=4096)
def read_entry(text: str, dimension: str, bare_unit: str) -> Entry:
    """Read one number and at most one unit; a bare number takes the field's unit.

    Parameters: text, at most 40 characters; dimension, a key of `calc.quantities.units.DIMENSIONS`; bare_unit, its unit.
    Returns: Entry with a finite number and a unit of the dimension.
    Raises: EntryError with a code: empty, long, characters, pair, two-numbers, separator, ambiguous, infinite, unit, dimension.
    Formula: number = sign, digits with one decimal comma or point, optional power of ten; unit by allow-list.
    Source: common practice, no source: "4,4", "110mm", "13 st 4 lb", "0.46 kg/mm" as people write them.
    Example:
        >>> read_entry("0,46 kg/mm", "spring rate", "N/mm")
        Entry(number=0.46, unit='kgf/mm')
    """
    clean = _tidy(text)
    stone = _STONE.fullmatch(clean.lower()) if dimension == "mass" else None
    if stone:
        return Entry(convert(_stones(stone), "st", "kg"), "kg")
    matched = _NUMBER.match(clean)
    if not matched:
        raise EntryError("characters", "this is not a number")
    meant = meanings(clean)
    if meant:
        raise _offering(meant, dimension, bare_unit)
    if _PAIR.fullmatch(clean):
        raise EntryError("pair", "these are two numbers; only one goes in here")
    if _NUMBER.search(clean, matched.end()) and not _trailing_unit(clean[matched.end() :]):
        raise EntryError("two-numbers", "write one number and one unit; one decimal comma or point, no other separator")
    number = _number(matched)
    unit = _unit(clean[matched.end() :].strip(), dimension, bare_unit, clean[: matched.end()])
    return Entry(number, unit)


def _tidy(text: str) -> str:
    if len(text) > MAX_CHARACTERS:
        raise EntryError("long", f"this is too long: at most {MAX_CHARACTERS} characters")
    clean = re.sub(r"[\s\u00a0\u202f\u2009]+", " ", text).strip().translate(_SIGNS)
    if not clean:
        raise EntryError("empty", "nothing is entered")
    if any(unicodedata.category(c)[0] == "C" for c in clean):
        raise EntryError("characters", "this contains characters that cannot be shown")
    return clean


def _stones(matched: re.Match[str]) -> float:
    pounds = float(matched.group(2).replace(",", "."))
    if pounds >= 14:
        raise EntryError("characters", "a stone has 14 lb: write pounds below 14")
    return float(matched.group(1)) + pounds / 14.0


def _offering(meant: tuple[str, ...], dimension: str, bare_unit: str) -> EntryError:
    """The refusal of a number in thousands; what is offered instead can be read, or else the refusal says why it cannot."""
    for text in meant:
        try:
            read_entry(text, dimension, bare_unit)
        except EntryError as error:
            return error
    if len(meant) > 1:
        return EntryError("ambiguous", "this comma can be read two ways: choose one, or type it again", meant)
    return EntryError("separator", "write it without marks between the thousands", meant)


def _number(matched: re.Match[str]) -> float:
    sign, digits, power = matched.groups()
    number = float(f"{sign}{digits.replace(',', '.')}e{power or '0'}")
    if not math.isfinite(number):
        raise EntryError("infinite", "this number is too large to compute with")
    return number + 0.0


def _trailing_unit(rest: str) -> bool:
    return rest.strip().lower() in ALIASES


def _unit(written: str, dimension: str, bare_unit: str, number: str) -> str:
    if not written:
        return bare_unit
    key = re.sub(r"\s*/\s*", "/", written)
    folded = key.lower()
    if folded in AMBIGUOUS.get(dimension, {}):
        offered = AMBIGUOUS[dimension][folded]
        raise EntryError("ambiguous", f"{written} can be read two ways: choose one", tuple(f"{number} {o}" for o in offered))
    allowed = DIMENSIONS[dimension].units
    for candidate in (key, *ALIASES.get(folded, ())):
        if candidate in allowed:
            return candidate
    if folded in ALIASES or any(key in d.units for d in DIMENSIONS.values()):
        raise EntryError("dimension", f"{written} does not fit here: use {_list(tuple(allowed))}")
    raise EntryError("unit", f"{written!r} is not a unit known here: use {_list(tuple(allowed))}")


def _list(units: tuple[str, ...]) -> str:
    names = [u for u in units if u]
    return ", ".join(names) if names else "a plain number"
