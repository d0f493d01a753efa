"""A hundred thousand texts: each is one finite number in an accepted unit, or a refusal in words whose offers can all be taken.

STANCHION_MORE=10 takes a million. What a text may take is 50 ms; the test stops only what hangs.
"""

import math
from random import Random
from time import process_time

import pytest

from calc.job.field import Kind
from calc.job.fields import FIELDS
from calc.job.lists import listed, read_pairs
from calc.job.ranges import NO_RANGES
from calc.job.resolve import _resolve
from calc.quantities.entry import EntryError, convert, internal_unit, read_entry
from calc.quantities.units import DIMENSIONS
from tests.support.fuzzed_strings import fuzzed
from tests.support.how_many import TIMES

CHUNKS, EACH = 20, 5000
HANGS = 5.0  # s of this process
NUMBERS = [field for field in FIELDS.values() if field.kind is Kind.QUANTITY]
PAIRS = [field for field in FIELDS.values() if field.kind is Kind.PAIRS]
LISTS = [field for field in FIELDS.values() if field.kind in (Kind.RATES, Kind.SHIMS)]


def check_read(text: str, dimension: str, bare: str) -> bool:
    """Read as one number, or refused; True where it is a number."""
    try:
        entry = read_entry(text, dimension, bare)
    except EntryError as error:
        assert error.code
        assert error.message.strip()
        for offer in error.readings:
            assert math.isfinite(read_entry(offer, dimension, bare).number), (text, offer)
        return False
    assert entry.unit in DIMENSIONS[dimension].units
    assert math.isfinite(entry.number)
    assert not math.isnan(convert(entry.number, entry.unit, internal_unit(dimension)))
    return True


def check_field(field, text: str) -> None:
    """What a field makes of it: a reading within its limits, or a problem at its path whose offers it would take."""
    found = _resolve(field, (("value", text),), NO_RANGES, None)
    if found.problem is None:
        assert found.reading is not None or found.rates or found.pairs or found.groups
        return
    assert found.reading is None
    assert (found.problem.path, found.problem.message.startswith(f"{field.label}: ")) == (field.path, True)
    assert found.problem.limit
    for offer in found.problem.readings:
        assert _resolve(field, (("value", offer),), NO_RANGES, None).problem is None, (field.path, text, offer)


def check_lists(rng: Random, text: str) -> None:
    assert all(part.strip() == part and part for part in listed(text))
    try:
        pairs = read_pairs(rng.choice(PAIRS), text)
    except EntryError as error:
        assert error.message
    else:
        assert all(math.isfinite(number) for pair in pairs for number in pair)
    check_field(rng.choice(LISTS), text)


@pytest.mark.timeout(600)
@pytest.mark.parametrize("chunk", range(CHUNKS * TIMES))
def test_a_text_is_read_or_refused(chunk):
    rng, read, slowest = Random(f"strings {chunk}"), 0, 0.0
    for count in range(EACH):
        field = rng.choice(NUMBERS)
        text = fuzzed(rng, field.dimension)
        started = process_time()
        try:
            read += check_read(text, field.dimension, field.unit)
            check_field(field, text)
            if count % 5 == 0:
                check_lists(rng, text)
        except EntryError as error:
            raise AssertionError(f"{text!r} at {field.path}: an offer cannot be read") from error
        slowest = max(slowest, process_time() - started)
    assert slowest < HANGS
    assert read > 0.1 * EACH, "too little of it can be read at all"
    print(f"slowest {slowest:.4f} s of this process")
