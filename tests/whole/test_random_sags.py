"""Random bikes with sags found near, and sometimes far from, what they were expected to be: every verdict's words agree with its
numbers, and none ends unnamed.
"""

from __future__ import annotations

import copy
from collections import Counter
from random import Random

import numpy as np
import pytest

from calc.impossible import Impossible
from calc.job import Job, load
from calc.model.observed import STICKS, expected
from calc.practice import AXLES
from calc.report import report_of
from calc.report.letter import letter, sags_text
from calc.report.types import Report
from tests.support.how_many import TIMES
from tests.support.random_jobs import random_job

CHUNKS, EACH = 6, 8


def with_sags(rng: Random, document: dict) -> tuple[dict, bool]:
    """The job with sags read as a tape would read them, now and then 60 mm off or with a tube that sticks."""
    document, odd = copy.deepcopy(document), rng.random() < 0.25
    job, some = load(document), False
    for axle in AXLES:
        try:
            here = expected(job, axle)
        except (Impossible, KeyError):
            continue
        group, off = document.setdefault(axle, {}), rng.choice([60, -60, 30]) if odd else 0
        for case, sag, stick in zip(("alone", "aboard"), np.ravel(here.sags), np.ravel(here.friction), strict=True):
            if rng.random() < 0.85:
                apart = min(stick, 7.0) if rng.random() < 0.9 else 12.0
                group[f"{case}_sag"] = f"{max(sag + off + apart + rng.gauss(0, 1), 0):.0f}"
                group[f"{case}_again_sag"] = f"{max(sag + off - apart + rng.gauss(0, 1), 0):.0f}"
                some = True
    return document, some


def check(job: Job, report: Report, seen: Counter) -> None:
    """Every sentence of the sags against the numbers beside it."""
    sags = report.sags
    assert sags is not None
    for end in sags.ends:
        if end.refused:
            seen["refused"] += 1
            assert end.words[0] == end.refused
            assert len(end.words) == 1 + ("something sticks" in end.refused), "then what to look at"
            assert not end.rows
            continue
        for row, words in zip(end.rows, end.words, strict=False):
            unknown = "too little is known of this end yet to expect one" in words
            assert f"{row.found.text} mm found" in words
            assert (f"found, {row.expected.text}" in words) != unknown, "a number that is no expectation is not told"
            off = row.found.value - row.expected.value
            room = ((row.expected.plus_minus_95 or 0.0) ** 2 + (row.found.plus_minus_95 or 0.0) ** 2) ** 0.5
            if not row.believed:
                seen["left out"] += 1
                assert "left out" in words
            elif ": as expected." in words or unknown:
                seen["as expected"] += 1
                assert unknown == ((row.expected.plus_minus_95 or 0.0) > 20.0)
                assert abs(off) <= room + 1.0
            elif "beyond what your readings allow" in words:
                seen["off"] += 1
                assert abs(off) > room - 1.0
                assert ("more" in words) == (off > 0)
            else:
                assert "at its top" in words
                seen["topped out"] += 1
        if end.spring_rate is not None:
            assert any(end.spring_rate.text in words for words in end.words)
    for one in sags.corrections:
        seen["corrected"] += 1
        assert one.before.text in one.words
        assert one.after.text in one.words
        assert one.after.plus_minus_95 is not None
    assert sags.applied == (job.choice("bike.sags_correct") == "yes" and any(row.believed for end in sags.ends for row in end.rows))
    assert all(words for words in (letter(report), sags_text(report)))


@pytest.mark.timeout(600)
@pytest.mark.parametrize("chunk", range(CHUNKS * TIMES))
def test_sags_of_random_bikes_are_told_as_their_numbers_have_it(chunk):
    seen, rng = Counter(), Random(f"sags {chunk}")
    for number in range(EACH):
        name = f"sags {chunk} {number}"
        document, some = with_sags(rng, random_job(name, f"{name} f", f"{name} r"))
        if not some:
            continue
        job = load(document)
        check(job, report_of(job, with_bands=number % 3 == 0), seen)
    assert seen["as expected"] >= 3, seen
    assert seen["refused"] + seen["left out"] + seen["off"] > 0, seen


def test_a_wide_spread_is_refused_at_15_mm():
    assert STICKS == 15.0  # common practice, no source
