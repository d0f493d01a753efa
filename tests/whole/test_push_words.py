"""Every verdict of a bench push, its words walked against the numbers beside them; and where it is told."""

from __future__ import annotations

import math
import re
from collections import Counter
from functools import lru_cache
from random import Random

import pytest

from calc.boundary import to_json
from calc.demo import jobs
from calc.job import Job, load
from calc.report import report_of
from calc.report.letter import letter
from calc.report.push import push_report
from calc.report.push_text import push_lines
from calc.report.text import report_text
from calc.report.types import PushReport
from calc.uncertainty.corrected import sags_found
from calc.uncertainty.rivals import push_found
from tests.support.documents import changed, demo
from tests.support.hand_push import GAS, PISTON, STATES, made_up, made_up_push, slow_force
from tests.support.how_many import TIMES
from tests.support.random_jobs import random_job

CASES = 32
LABELS = {
    "open": "As read", "as built": "Sealed as built", "seal leaking": "Seal leaking", "oil moved": "Oil moved", "opened into one": "Opened to the leg",
}  # fmt: skip


def documents() -> list[dict]:
    """Pushes of every state, some with a slip in them, some refused, some of open legs."""
    made = []
    for number in range(CASES):
        document = made_up_push(f"words {number}", (GAS, PISTON)[number % 2], STATES[number // 2 % 4]).document
        points = document["front"]["push_points"].split("; ")
        if number % 8 == 5:
            points[2] = f"240 {float(points[2].split()[1]) * 1.7:.0f}"
        if number % 16 == 11:
            points[4] = "400 900"
        changes: dict = {"front.push_points": "; ".join(points)}
        if number % 8 == 3:
            changes |= {"front.gap_left": None}
        made.append(changed(document, changes))
    return made + [open_leg(off) for off in (0.0, 15.0)]


def open_leg(off: float) -> dict:
    """An open leg, its gap read so far off [mm]."""
    leg, document = made_up(Random("open"), PISTON, True)
    points = "; ".join(f"{stroke} {slow_force(leg, 'opened into one', stroke) + 20:.0f}" for stroke in (150, 200, 240, 262, 278))
    return changed(document, {"front.air": "open", "front.push_points": points, "front.gap_left": f"{leg.gap + off:.0f} mm"})


@lru_cache(maxsize=1)
def told() -> list[tuple[Job, PushReport]]:
    found = []
    for document in [*documents(), jobs()["trail"]]:
        job = load(document)
        report = push_report(job, sags_found(job))
        assert report is not None
        found.append((job, report))
    return found


def known_numbers(job: Job, report: PushReport) -> set[str]:
    """Every number that the report tells, as its text has it."""
    figures = [
        figure
        for rival in report.rivals
        for figure in (rival.chance, rival.without, rival.gap, rival.gap_now, rival.moved, *rival.residuals)
    ]
    figures += [figure for point in report.points for figure in (point.stroke, point.force)]
    if report.further:
        figures += [report.further.stroke, report.further.apart, *(one.force for one in report.further.expected)]
    texts = {text.lstrip("−±") for figure in figures if figure for text in (figure.text, figure.plus_minus_text) if text}
    read = [job.fields[path].reading for path in ("front.gap_left", "front.gap_right", "front.push_gap")]
    together = sum(rival.chance.value for rival in report.rivals if rival.state in report.states)
    return texts | {f"{one.value:.0f}" for one in read if one} | {f"{together:.0f}", "100", "99", "1", "0"}


def test_every_number_in_words_is_one_of_the_report():
    for job, report in told():
        if report.refused:
            continue
        numbers = known_numbers(job, report)
        for words in (report.verdict, *report.words):
            said = {one.lstrip("−±") for one in re.findall(r"[−±]?\d+(?:\.\d+)?", words)}
            assert said <= numbers, (words, said - numbers)


def kind_of(report: PushReport) -> str:
    """Which verdict a report's numbers call for."""
    if report.refused:
        return "refused"
    if not any(rival.fits for rival in report.rivals):
        return "none fits"
    if report.rivals[0].state == "open":
        return "open leg"
    whole = sum(rival.chance.value for rival in report.rivals if rival.state in report.states)
    assert not report.states or whole >= 95
    if len(report.states) > 1:
        assert set(report.states) == {"seal leaking", "opened into one"}
        return "charge gone"
    assert report.states in ((), (report.rivals[0].state,))
    if not report.states and settled_as(report, "chance") and report.doubtful:
        assert settled_as(report, "without") != settled_as(report, "chance")
        return "hangs"
    assert report.states or report.rivals[0].chance.value < 95 or not report.rivals[0].fits
    return report.states[0] if report.states else "can't tell"


def settled_as(report: PushReport, by: str) -> frozenset[str]:
    """The state, or the two that lost the charge, that have 95 in 100 of the chances of all points, or without those in doubt."""
    figures = {rival.state: getattr(rival, by) for rival in report.rivals if rival.fits or by == "without"}
    chances = {state: figure.value for state, figure in figures.items() if figure is not None}
    alone = frozenset(state for state, chance in chances.items() if chance >= 95)
    gone = frozenset({"seal leaking", "opened into one"})
    return alone or (gone if gone <= set(chances) and sum(chances[state] for state in gone) >= 95 else frozenset())


def verdict_of(report: PushReport, kind: str) -> str:
    """How the verdict of that kind begins, by the report's numbers."""
    best = report.rivals[0] if report.rivals else None
    asked = [f"{rival.label[0].lower()}{rival.label[1:]} {rival.chance.text}" for rival in report.rivals if rival.open]
    return {
        "refused": report.refused,
        "none fits": "Can't tell: no explanation fits these points",
        "open leg": "These points fit the leg as you read it",
        "charge gone": "The charge is gone, ",
        "hangs": "Can't tell: it hangs on the point",
        "can't tell": f"Can't tell: {', '.join(asked[:-1])} or {asked[-1]} in 100." if len(asked) > 1 else "",
    }.get(kind, f"{best.label}: {best.chance.text} in 100." if best else "")


def test_the_verdict_says_what_the_chances_say():
    seen: Counter = Counter()
    for _, report in told():
        kind = kind_of(report)
        seen[kind] += 1
        assert report.verdict.startswith(verdict_of(report, kind)), (report.verdict, kind)
        if kind == "refused":
            assert (report.rivals, report.words, report.states) == ((), (), ())
            assert "collapsed" in report.refused
    assert set(seen) >= {"refused", "none fits", "open leg", "charge gone", "can't tell", "as built", "oil moved"}, seen


def test_chances_are_told_as_they_are():
    for _, report in told():
        chances = [rival.chance.value for rival in report.rivals]
        assert not chances or sum(chances) == pytest.approx(100, abs=1e-6)
        assert chances == sorted(chances, reverse=True)
        for rival in report.rivals:
            sure, hardly = rival.chance.value > 99.5, rival.chance.value < 0.5
            assert rival.chance.text == ("over 99" if sure else "under 1" if hardly else f"{rival.chance.value:.0f}")
            assert rival.open == (rival.fits and rival.chance.value >= 5)
            assert rival.label == LABELS[rival.state]


def test_what_follows_agrees_with_the_data():
    for job, report in told():
        words, sealed = " ".join(report.words), report.note != ""
        fitting = any(rival.fits for rival in report.rivals)
        assert ("lost seal" in words) == (sealed and fitting)
        assert ("under pressure" in words) == (sealed and fitting and report.states != ("as built",))
        assert ("Read it again, in and out" in words) == (bool(report.rivals) and not fitting)
        if report.states == ("oil moved",):
            moved = report.rivals[0].moved
            assert ("left the cartridge: less stands behind" in words) == (moved.value > 0)
            assert ("gone into the cartridge: more stands behind" in words) == (moved.value < 0)
        built = next((rival for rival in report.rivals if rival.state == "as built"), None)
        ruled_out = fitting and not report.states and not report.doubtful and built is not None and not built.open
        assert ("out of the question" in words) == ruled_out
        gap = report.rivals[0].gap if report.rivals else None
        if "By these points alone the gap" in words:
            assert gap.plus_minus_95 <= 20
            if "was read" in words:
                read = job.fields["front.push_gap" if job.entered("front.push_gap") else "front.gap_left"].reading
                within = abs(gap.value - read.value) <= math.hypot(gap.plus_minus_95, read.plus_minus_95)
                assert ("that was read fits that" in words) == within
                assert ("not the" in words) == (not within)
        if "tell little of the gap" in words:
            assert gap.plus_minus_95 > 20
        further, asked = report.further, [rival for rival in report.rivals if rival.open]
        assert (further is not None) == (len(asked) > 1)
        if further:
            one, other = further.expected
            assert further.apart.value == pytest.approx(abs(one.force.value - other.force.value))
            assert further.tells == (further.apart.value >= further.apart.plus_minus_95 * (1 - 1e-3))
            assert ("Next, read" in words) == further.tells
            assert ("press alike" in words) == (further.apart.value < 0.1 * further.apart.plus_minus_95)
            assert float(further.stroke.text) % 10 == 0
            assert further.stroke.value <= job.number("front.travel")
            assert {one.label, other.label} <= {rival.label for rival in asked}
        told_gaps = [rival.gap_now for rival in asked if rival.gap_now]
        wide = max(
            (abs(a.value - b.value) - math.hypot(a.plus_minus_95, b.plus_minus_95, 2.0) for a in told_gaps for b in told_gaps),
            default=-1.0,
        )
        assert ("Reading the gap now would tell" in words) == (len(asked) > 1 and wide > 0)
        assert ("friction then drops out" in words) == (len(asked) > 1 and report.read != "both" and not report.states)


def test_residuals_and_curves_are_those_of_the_points():
    """What a state misses a point by is small against its curve there; a point in doubt is named where nothing explains it."""
    for _, report in told():
        for rival in report.rivals:
            assert len(rival.residuals) == len(rival.doubtful) == len(report.points)
            assert len(rival.curve) <= len(report.strokes)
            assert all(math.isfinite(force) for force in rival.curve)
            if rival.fits:
                for point, off in zip(report.points, rival.residuals, strict=True):
                    assert abs(off.value) < 0.12 * point.force.value + 30
        asked = [rival for rival in report.rivals if rival.open]
        in_doubt = {
            i for i in range(len(report.points)) if report.rivals and all(r.doubtful[i] for r in asked or report.rivals[:1])
        }
        assert set(report.doubtful) <= in_doubt
        assert len(report.doubtful) == (len(in_doubt) if asked else min(len(in_doubt), 1)), "where none fits, the worst alone"
        for i, point in enumerate(report.points):
            named = any(f"The point at {point.stroke.text} mm does not fit" in words for words in report.words)
            assert named == (i in report.doubtful)
        assert any("Without" in words for words in report.words) == (bool(report.doubtful) and report.rivals[0].state != "open")


def test_a_slip_of_one_point_is_found_and_the_others_say_what_they_say_without_it():
    """As if it had never been read: the chances are those of a push of the other points."""
    seen = 0
    for number in range(CASES):
        document = made_up_push(f"slip {number}", (GAS, PISTON)[number % 2], STATES[number // 2 % 4]).document
        points = document["front"]["push_points"].split("; ")
        slipped = [*points[:2], f"240 {float(points[2].split()[1]) * 1.7:.0f}", *points[3:]]
        with_slip, without = (
            push_report(job, sags_found(job))
            for job in (
                load(changed(document, {"front.push_points": "; ".join(some)})) for some in (slipped, points[:2] + points[3:])
            )
        )
        if with_slip.doubtful != (2,):
            continue
        seen += 1
        chances = {rival.state: rival.chance.value for rival in without.rivals if rival.fits}
        assert {r.state: r.without.value for r in with_slip.rivals if r.without is not None} == pytest.approx(chances)
        assert not with_slip.states or with_slip.states == without.states
    assert seen > CASES / 2


def test_it_is_told_in_the_letter_in_full_and_as_json_and_not_without_bands():
    job = load(jobs()["trail"])
    report = report_of(job)
    assert report.push is not None
    short, full = " ".join(letter(report).split()), " ".join(report_text(report).split())
    assert f"Push {report.push.verdict} {report.push.words[0]}" in short
    for words in (report.push.verdict, *report.push.words, report.push.note, *(rival.label for rival in report.push.rivals)):
        assert words in full, words
    assert '"states":["seal leaking","opened into one"]' in to_json(report)
    assert report_of(job, with_bands=False).push is None
    assert report_of(load(demo())).push is None


def test_a_push_changes_nothing_of_the_answer():
    """It is a result: the ends are sized as without it."""
    with_it = report_of(load(jobs()["trail"]))
    without = report_of(load(changed(jobs()["trail"], {"front.push_points": None, "front.push_gap": None})))
    assert with_it.ends == without.ends
    assert without.push is None


@pytest.mark.parametrize("chunk", range(TIMES))
def test_a_push_of_any_leg_is_answered_or_refused_in_words(chunk):
    """Random forks and random points: no answer is not a number, and none ends without a word."""
    answered: Counter = Counter()
    for number in range(40 * chunk, 40 * (chunk + 1)):
        rng, document = Random(f"any {number}"), random_job(f"bike {number}", f"fork {number}", "rear")
        travel = load(document).number("front.travel")
        strokes = sorted(rng.sample(range(30, max(int(travel), 45)), rng.randint(2, 8)))
        points = "; ".join(
            f"{stroke} {rng.uniform(20, 120) * (1 + (stroke / rng.uniform(80, 200)) ** 3):.0f}" for stroke in strokes
        )
        chosen = {"front.air": rng.choice(("open", "sealed cartridge")), "front.push_read": rng.choice(("in", "out", "both"))}
        job = load(changed(document, {"front.push_points": points, **chosen}))
        report = push_report(job, sags_found(job))
        assert report is not None
        assert report.verdict
        assert "NaN" not in to_json(report)
        assert push_lines(report)
        answered["refused" if report.refused else "answered"] += 1
    assert answered["answered"] > 20, answered


def test_an_edit_elsewhere_asks_nothing_anew():
    """The rear and the rider have no part in it: the same object is told again."""
    document = jobs()["trail"]
    before = push_found(load(document))
    assert push_found(load(changed(jobs()["trail"], {"rear.preload": "7 mm", "rider.mass": "80 kg"}))) is before
    assert push_found(load(changed(jobs()["trail"], {"front.push_gap": "188 mm"}))) is not before
