"""What a customer is asked, one thing at a time, in words that a rider without a workshop reads."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from calc.job.customer import ABOARD, ALONE, FRONT, HANGING, LABELS, NEEDED
from calc.job.fields import FIELDS
from calc.practice import POSTURE, SOLD_LOADED, Axle


@dataclass(frozen=True)
class Question:
    """One screen.

    `name`: what it is called in a file; `path`: its field, empty where nothing is asked; `title`: the question; `words`, and what
    the rider and the helper do; `you` may differ by how the rider is on the bike; `caution`; `choices` in the customer's words;
    `drawing`: which one; `next`: what the button that leads on says; `uses`: only of these kinds of riding, all where empty; `end`: which it
    is for: the front is asked after the rear's verdict, of who wants to know.
    """

    name: str
    path: str
    title: str
    words: tuple[str, ...] = ()
    you: Mapping[str, str] = field(default_factory=dict)
    helper: str = ""
    caution: str = ""
    choices: Mapping[str, str] = field(default_factory=dict)
    drawing: str = ""
    next: str = "Next"
    uses: tuple[str, ...] = ()
    end: Axle = "rear"

    @property
    def optional(self) -> bool:
        """Whether it can be left out."""
        return bool(self.path) and self.path not in (*NEEDED, *FRONT)


_ANY = "any"
_HOLD = {_ANY: "hold the bars, with the bike upright on both wheels."}
_ON = "get on in full kit"
_RIDES = {
    "standing": f"{_ON}. Stand on the pegs as you ride, with one hand on a wall.",
    "sitting": f"{_ON}. Sit as you ride, feet on the pegs, with one hand on a wall.",
    "loaded": f"{_ON}, with your passenger and the luggage. Sit as you ride, feet on the pegs, with one hand on a wall.",
}
_PUSH = "push the tail down 3 cm. Let it rise by itself. Wait 15 seconds, then read."
_LIFT = "lift the tail 3 cm. Let it sink by itself. Wait 15 seconds, then read."
_PUSH_FRONT = "push the bars down 3 cm. Let them rise by themselves. Wait 15 seconds, then read."
_LIFT_FRONT = "lift the bars 3 cm. Let them sink by themselves. Wait 15 seconds, then read."
_SKIP = "Skip this if you do not know."
_HOW_FAR = "how far is it from the axle to the dot?"
_HOW_FAR_FRONT = "how far is it along the leg, from the axle to the dot?"
_FALLS = "A bike can fall. Hold it all the time, and keep fingers out of the wheel."

QUESTIONS = (
    Question("riding", "bike.use", "What kind of riding do you do?", ("Choose what you do most on this bike.",)),
    Question(
        "weight", "rider.mass", "What do you weigh in full kit?",
        ("Stand on bathroom scales in all that you ride in: boots, helmet, pack and drink.",),
    ),
    Question("passenger", "rider.passenger", "What does your passenger weigh in full kit?", (_SKIP,), uses=tuple(SOLD_LOADED)),
    Question("luggage", "rider.luggage", "What does your luggage weigh?", (_SKIP,), uses=tuple(SOLD_LOADED)),
    Question(
        "bike", "bike.mass", "What does the bike weigh?", ("With fuel, ready to ride. The figure in the book will do.", _SKIP),
    ),
    Question(
        "travel", "rear.travel", "How far can the rear wheel move?", ("The book calls it rear wheel travel.", _SKIP),
    ),
    Question(
        "spring", "standard.shock_spring", "Is it the rear spring that the bike was sold with?",
        ("If the bike was new when you got it, you know. If not, ask who had it before.",),
        choices={"as sold": "Yes", "changed": "No, it was changed", "unknown": "I do not know"},
    ),
    Question(
        "ready", "", "Get ready: a tape, a helper and five minutes",
        (
            "Put the bike on level ground, in neutral. Keep off the brake.",
            "Set the tyre pressures that you ride with.",
            "Stick a dot on the tail, straight above the rear axle. All five readings are from the middle of the axle to this dot.",
        ),
        caution=f"{_FALLS} The maker's manual comes first.", drawing="dot", next="Next: first reading",
    ),
    Question(
        "hanging", HANGING, f"{LABELS[HANGING]}: {_HOW_FAR}",
        you={_ANY: "put the bike on a stand under its frame, so that the rear wheel hangs. Or tip it over its side stand until the wheel lifts."},
        helper="read the tape. Write what you see; do not tidy it.", caution=_FALLS, drawing="hanging", next="Next: bike alone",
    ),
    Question(
        "alone", ALONE[0], f"{LABELS[ALONE[0]]}: {_HOW_FAR}", you=_HOLD, helper=_PUSH, drawing="pushed", next="Next: after a lift",
    ),
    Question(
        "alone again", ALONE[1], f"{LABELS[ALONE[1]]}: {_HOW_FAR}", you=_HOLD, helper=_LIFT, drawing="lifted", next="Next: you on the bike",
    ),
    Question(
        "aboard", ABOARD[0], f"{LABELS[ABOARD[0]]}: {_HOW_FAR}", you=_RIDES, helper=_PUSH, drawing="aboard pushed", next="Next: after a lift",
    ),
    Question(
        "aboard again", ABOARD[1], f"{LABELS[ABOARD[1]]}: {_HOW_FAR}", you=_RIDES, helper=_LIFT, drawing="aboard lifted", next="See the verdict",
    ),
    Question(
        "front travel", "front.travel", "How far can the fork move?", ("The book calls it fork travel.", _SKIP), end="front",
    ),
    Question(
        "front springs", "standard.fork_springs", "Are they the fork springs that the bike was sold with?",
        ("A fork that you pump up has no springs. Then this part is not for you.",),
        choices={"as sold": "Yes", "changed": "No, they were changed", "unknown": "I do not know"}, end="front",
    ),
    Question(
        "front ready", "", "Get ready for the front: the same tape, the same helper",
        (
            "Level ground, in neutral. Keep off the brakes.",
            "Stick a dot on the lower clamp that holds the fork legs. All five readings are along one leg, from the middle of the front axle to this dot.",
        ),
        caution=f"{_FALLS} The maker's manual comes first.", drawing="front dot", next="Next: first reading", end="front",
    ),
    Question(
        "front hanging", FRONT[0], f"{LABELS[FRONT[0]]}: {_HOW_FAR_FRONT}",
        you={_ANY: "put the bike on a stand under its frame and weigh the tail down, so that the front wheel hangs."},
        helper="read the tape. Write what you see; do not tidy it.", caution=_FALLS, drawing="front hanging", next="Next: bike alone", end="front",
    ),
    Question(
        "front alone", FRONT[1], f"{LABELS[FRONT[1]]}: {_HOW_FAR_FRONT}", you=_HOLD, helper=_PUSH_FRONT, drawing="front pushed",
        next="Next: after a lift", end="front",
    ),
    Question(
        "front alone again", FRONT[2], f"{LABELS[FRONT[2]]}: {_HOW_FAR_FRONT}", you=_HOLD, helper=_LIFT_FRONT, drawing="front lifted",
        next="Next: you on the bike", end="front",
    ),
    Question(
        "front aboard", FRONT[3], f"{LABELS[FRONT[3]]}: {_HOW_FAR_FRONT}", you=_RIDES, helper=_PUSH_FRONT, drawing="front aboard pushed",
        next="Next: after a lift", end="front",
    ),
    Question(
        "front aboard again", FRONT[4], f"{LABELS[FRONT[4]]}: {_HOW_FAR_FRONT}", you=_RIDES, helper=_LIFT_FRONT, drawing="front aboard lifted",
        next="See the verdict", end="front",
    ),
)  # fmt: skip


def exported() -> dict[str, Any]:
    """The questions for the page, as plain data; how the rider is on the bike, by kind of riding."""
    return {
        "questions": [
            {
                "name": one.name,
                "path": one.path,
                "label": LABELS.get(one.path, ""),
                "title": one.title,
                "words": list(one.words),
                "you": dict(one.you),
                "helper": one.helper,
                "caution": one.caution,
                "choices": [{"key": key, "label": label} for key, label in (one.choices or _choices(one)).items()],
                "drawing": one.drawing,
                "next": one.next,
                "uses": list(one.uses),
                "end": one.end,
                "optional": one.optional,
            }
            for one in QUESTIONS
        ],
        "rides": {use: "loaded" if use in SOLD_LOADED else posture for use, posture in POSTURE.items()},
    }


def _choices(one: Question) -> Mapping[str, str]:
    return FIELDS[one.path].choices if one.path else {}


def sheet() -> str:
    """The questions as a sheet to fill in: a line each, what is read after the colon."""
    lines = ["# Check my bike: write each answer after its colon. What you do not know stays empty."]
    for number, one in enumerate(QUESTIONS):
        if one.end == "front" and QUESTIONS[number - 1].end != "front":
            lines += ["", "# The front, if you want to know of it too. Else stop here."]
        asked = [
            one.title,
            *one.words,
            *(f"You{f', {how}' if len(one.you) > 1 else ''}: {words}" for how, words in one.you.items()),
            one.caution,
        ]
        asked += [f"Helper: {one.helper}"] if one.helper else []
        choices = one.choices or _choices(one)
        asked += [f"One of: {', '.join(choices)}."] if choices else []
        lines += ["", *(f"# {words}" for words in asked if words), *([f"{one.name}:"] if one.path else [])]
    return "\n".join(lines)
