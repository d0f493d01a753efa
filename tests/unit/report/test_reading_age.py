"""How old a reader must be of what a customer is asked, told and sent."""

from __future__ import annotations

from random import Random

import pytest

from calc.demo import jobs
from calc.job import load
from calc.job.customer import FRONT
from calc.report.customer import my_bike
from calc.report.customer_words import (
    OTHERS,
    claim_words,
    narrows_words,
    not_words,
)
from calc.report.states import states_report
from calc.report.types import Verdict
from tests.support.hand_push import GAS, made_up
from tests.support.said import said, told, verdict_text_of
from tests.unit.report.test_message import AIR, BUILT_FRONT, BUILT_REAR, SERVICE, SOLD, loosely
from tests.unit.report.test_message import told as message

# The library asks for setuptools' old resources, and leaves its dictionary's file to the rubbish collector.
pytestmark = pytest.mark.filterwarnings(
    "ignore:pkg_resources is deprecated",
    "ignore::DeprecationWarning",
    "ignore::ResourceWarning",
    "ignore::pytest.PytestUnraisableExceptionWarning",
)


def every_text() -> list[str]:
    """All that a customer reads: what is asked and what is told."""
    from calc.job.questions import QUESTIONS

    asked = [part for one in QUESTIONS for part in (one.title, *one.words, *one.you.values(), one.helper, one.caution) if part]
    claims = [" ".join(claim_words(claim, chance)) for claim in ("soft", "suits", "stiff") for chance in (0.8, 0.99)]
    nots = [" ".join(not_words(finding, plain)) for finding in ("soft", "suits", "open", "sticks") for plain in (True, False)]
    narrows = [
        narrows_words([path])
        for path in ("rear.leverage", "standard.rider", "standard.shock_rate", "rear.rate", "bike.mass", "rear.travel")
    ]
    verdicts = [
        verdict_text_of(told(lengths))
        for lengths in ((625, 591, 600, 496, 506), (625, 588, 596, 517, 527), (625, 598, 612, 508, 526))
    ]
    front = told_of_the_front((700, 662, 670, 612, 622)), told_of_the_front((700, 662, 680, 612, 632))
    ends = ("front", "rear")
    claims += [" ".join(claim_words(claim, chance, "front")) for claim in ("soft", "suits", "stiff") for chance in (0.85, 0.99)]
    nots += [" ".join(not_words(finding, plain, "front")) for finding in ("soft", "suits", "open") for plain in (True, False)]
    narrows += [narrows_words([path]) for path in ("standard.fork_rate", "front.rate", "front.travel")]
    return [
        *asked,
        *claims,
        *nots,
        *narrows,
        *verdicts,
        *map(verdict_text_of, front),
        *(one for end in ends for one in OTHERS[end]),
    ]


def told_of_the_front(lengths) -> Verdict:
    rear = said((625, 588, 596, 517, 527))
    found = my_bike(rear | dict(zip(FRONT, map(str, lengths), strict=True))).front
    assert found is not None
    return found


def test_a_child_of_twelve_reads_it():
    """Flesch-Kincaid grade by textstat: all together no more than the sixth school year, no passage beyond the eleventh."""
    import textstat

    texts = [text if text[-1] in ".?!" else f"{text}." for text in every_text()]
    assert textstat.flesch_kincaid_grade(" ".join(texts)) <= 6.0
    assert textstat.flesch_reading_ease(" ".join(texts)) >= 75.0
    hard = {text: grade for text in texts if (grade := textstat.flesch_kincaid_grade(text)) > 11.0}
    assert hard == {}


@pytest.mark.parametrize("seed", range(4))
def test_the_states_of_a_fork_are_told_to_a_child_of_thirteen(seed):
    """Flesch-Kincaid grade by textstat, as for all that a customer reads."""
    import textstat

    job = load(made_up(Random(f"age {seed}"), GAS, True)[1])
    report = states_report(job, job)
    plain = [row.plain for row in report.rows if row.plain]
    assert textstat.flesch_kincaid_grade(" ".join(plain)) <= 7.0
    assert textstat.flesch_reading_ease(" ".join(plain)) >= 75.0
    assert all(textstat.flesch_kincaid_grade(words) <= 11.0 for words in plain)


def test_a_message_is_for_a_child_of_twelve():
    """Flesch-Kincaid grade by textstat, as of the customer's path: no message beyond the sixth school year."""
    import textstat

    texts = [message(job=jobs()[name])[0] for name in jobs()]
    texts += [message(BUILT_FRONT | BUILT_REAR | SERVICE)[0], message(AIR)[0], message(BUILT_FRONT)[0]]
    texts += [
        message(job=loosely(use, rider, standard=SOLD), bands=True)[0]
        for use, rider in (("motocross", "70 kg"), ("youth", "45 kg"))
    ]
    for text in texts:
        body = text.split("\n\n", 1)[1]
        assert textstat.flesch_kincaid_grade(body) <= 6.0, body
        assert textstat.flesch_reading_ease(body) >= 75.0, body
