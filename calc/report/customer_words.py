"""What a customer is told, in words that a rider without a workshop reads: by the same numbers that stand beside them."""

from __future__ import annotations

from collections.abc import Sequence
from typing import Literal

from calc.practice import Axle

Claim = Literal["soft", "suits", "stiff"]

LEAST = 0.75  # of the chances: below it nothing is claimed. At two in three, seven of a hundred made-up bikes were told wrong
LEAST_FRONT = 0.8  # of a fork: at three in four, five of a hundred made-up ones were told wrong
PLAIN = 0.95  # from here on no "probably"
FRACTIONS = ((3, 4), (5, 6), (9, 10), (19, 20))
CLOSE = 0.9  # of the chances, two findings together: then these two are named
NO_SAG = 5.0  # mm: less is almost none

# opening and claim; the claim's "probably" goes where the bar stands
_CLAIMS: dict[Axle, dict[Claim, tuple[str, str, str]]] = {
    "rear": {
        "soft": ("Your rear spring is", "too soft", "for you"),
        "suits": ("Your rear spring", "suits", "you"),
        "stiff": ("Your rear spring is", "too stiff", "for you"),
    },
    "front": {
        "soft": ("Your fork springs are", "too soft", "for you"),
        "suits": ("Your fork springs", "suit", "you"),
        "stiff": ("Your fork springs are", "too stiff", "for you"),
    },
}
SPRINGS: dict[Axle, str] = {"rear": "your rear spring", "front": "your fork springs"}
_MAY: dict[Claim, str] = {"soft": "be too soft", "suits": "suit you", "stiff": "be too stiff"}

_AXLES = "The weight on each wheel, with you on and without you, would tell the most."
_NARROWS = {
    "rider.front_share_standing": _AXLES,
    "rider.front_share_sitting": _AXLES,
    "rider.mass": _AXLES,
    "rider.passenger": _AXLES,
    "rider.luggage": _AXLES,
    "bike.front_share": _AXLES,
    "bike.mass": _AXLES,
    "rear.unsprung": _AXLES,
    "standard.rider": "The rider weight that your bike is made for would tell the most. Look in the book, or ask a dealer.",
    "standard.shock_rate": "It would tell the most to know which rear spring the bike was sold with. Ask a dealer, or look in the book.",
    "rear.rate": "The number on the spring would tell the most. Your tuner can read it.",
    "rear.preload": "The number on the spring, and how far it is wound down, would tell the most. Your tuner can read both.",
    "rear.leverage": "It would tell the most to know how far the shock moves when the wheel moves. Your tuner can measure it.",
    "rear.leverage_fall": "It would tell the most to know how far the shock moves when the wheel moves. Your tuner can measure it.",
    "rear.travel": "It would tell the most to know how far the rear wheel can move. Look in the book.",
    "front.unsprung": _AXLES,
    "standard.fork_rate": "It would tell the most to know which fork springs the bike was sold with. Ask a dealer, or look in the book.",
    "front.rate": "The number on the fork springs would tell the most. Your tuner can read it.",
    "front.preload": "The number on the fork springs, and how far they are wound down, would tell the most. Your tuner can read both.",
    "front.travel": "It would tell the most to know how far the fork can move. Look in the book.",
}
OTHERS: dict[Axle, tuple[str, ...]] = {
    "rear": (
        "Something sticks: a dry bush, a stiff link, a chain that is too tight.",
        "The tyre has too much air, or too little.",
        "The shock has lost its gas or its oil. Never open a shock: it is under pressure.",
        "The front. This is about the rear only.",
    ),
    "front": (
        "Something sticks: a bent tube, dry bushes or seals, or an axle that pulls the legs together.",
        "The tyre has too much air, or too little.",
        "The oil in the fork: how high it stands sets how hard the last of the travel is.",
        "The rear. How high the tail stands moves weight to the front.",
    ),
}


def told_chance(chance: float) -> tuple[int, int]:
    """The nearest of the fractions that a chance is told by.

    Parameters: chance [-], of at least `LEAST`.
    Returns: times, out of how many.
    Raises: nothing. Formula: the least distance. Source: none.
    Example:
        >>> told_chance(0.82)
        (5, 6)
    """
    return min(FRACTIONS, key=lambda pair: abs(pair[0] / pair[1] - chance))


def claim_words(claim: Claim, chance: float, axle: Axle = "rear") -> tuple[str, str, str]:
    """A claim in three lines of one sentence.

    Parameters: claim; chance [-], of at least `LEAST`; axle.
    Returns: opening, claim, rest.
    Raises: nothing. Formula: none. Source: none.
    Example:
        >>> " ".join(claim_words("soft", 0.84))
        'Your rear spring is probably too soft for you: about 5 chances in 6.'
    """
    opening, word, whom = _CLAIMS[axle][claim]
    times, out_of = told_chance(chance)
    if chance >= PLAIN:
        return opening, word, f"{whom}: at least 19 chances in 20."
    return opening, f"probably {word}", f"{whom}: about {times} chances in {out_of}."


def open_words(chances: dict[Claim, float], axle: Axle = "rear") -> tuple[str, str, str]:
    """That nothing can be claimed, and between what it lies."""
    first, second, _ = sorted(chances, key=lambda claim: -chances[claim])
    if chances[first] + chances[second] >= CLOSE:
        rest = f"may {_MAY[first]}, or {_MAY[second]}."
    else:
        rest = "may suit you, be too soft or be too stiff."
    who = "They" if axle == "front" else "It"
    return "From these readings I", "can't tell yet", f"about {SPRINGS[axle]}. {who} {rest}"


def sticks_words(spreads: Sequence[float], axle: Axle = "rear") -> tuple[str, str, str]:
    """That two readings of one sag differ by too much [mm]."""
    low, high = (f"{spread:.0f}" for spread in (min(spreads), max(spreads)))
    by = f"{low} mm" if low == high else f"{low} and {high} mm"
    return (
        "I",
        "can't tell",
        f"about {SPRINGS[axle]}: your pairs of readings differ by {by}, so something sticks. Free it and measure again.",
    )


def odd_words(rider: float, travel: float, axle: Axle = "rear", topped_out: bool = False) -> tuple[str, str, str]:
    """That the readings go together with no bike, or nearly none: rider sag and travel [mm]; topped_out, at its top by itself."""
    if rider >= travel:
        what, moves = ("the fork", "it") if axle == "front" else ("the rear", "its wheel")
        why = f"With you on {what} sinks {rider:.0f} mm, and {moves} can move only {travel:.0f}. Check the readings and the travel."
    else:
        why = "These readings fit no bike of this kind with you on it. Check the weights, then read again."
        if topped_out:
            why = f"{why} Or {'the springs are' if axle == 'front' else 'the spring is'} wound up too far: have that looked at."
    return "I", "can't tell", f"about {SPRINGS[axle]}. {why}"


def height_words(
    found: float,
    wanted: float,
    content: float,
    free_now: float,
    free_then: float,
    usual: tuple[float, float],
    usual_aboard: tuple[float, float],
    axle: Axle = "rear",
) -> str:
    """What to do about the height, and what it costs; nothing where both sags are usual.

    Parameters: found, wanted rider sag, content with either way of it; free_now, free sag as found; free_then, once the rider sag
    is set; usual free sag and rider sag, from and to [all mm]; axle.
    Returns: two or three sentences.
    Raises: nothing. Formula: none. Source: common practice, no source: preload first.
    Example:
        >>> height_words(124.0, 104.0, 6.0, 30.0, 11.0, (21.0, 43.0), (98.0, 113.0))
        'More preload brings the height back: turn it up until the sag with you on is 104 mm. It leaves about 11 mm without you; 21 to 43 is usual.'
    """
    if abs(found - wanted) <= content:
        said = f"The height with you on is right: {found:.0f} mm of sag, {wanted:.0f} is wanted. Leave the preload."
        return f"{said} {_left(free_now, usual, 'Without you it sags')}"
    if _within(found, usual_aboard) and _within(free_now, usual):
        (low, high), (least, most) = (map(round, edges) for edges in (usual_aboard, usual))
        return (
            f"Leave the preload: both sags are usual. With you on it sags {found:.0f} mm; {low} to {high} is usual. "
            f"Without you it sags {free_now:.0f} mm; {least} to {most} is usual."
        )
    turned = (
        "More preload brings the height back: turn it up" if found > wanted else "Less preload brings the height down: turn it back"
    )
    if axle == "front":
        turned = turned.replace(":", ", where the fork has an adjuster:")
    return f"{turned} until the sag with you on is {wanted:.0f} mm. {_left(free_then, usual, 'It leaves about')}"


def _within(sag: float, usual: tuple[float, float]) -> bool:
    """Whether a sag is usual, as both are told: in whole millimetres."""
    return round(usual[0]) <= round(sag) <= round(usual[1])


def _left(free: float, usual: tuple[float, float], start: str) -> str:
    low, high = (round(edge) for edge in usual)
    if round(free) < min(NO_SAG, low):
        return f"{'It leaves' if start.startswith('It') else 'There is'} almost no sag without you; {low} to {high} mm is usual."
    without = " without you" if start.startswith("It") else ""
    if _within(free, usual):
        return f"{start} {free:.0f} mm{without}, which is usual."
    return f"{start} {free:.0f} mm{without}; {low} to {high} is usual."


def not_words(finding: str, plain: bool, axle: Axle = "rear") -> tuple[str, str]:
    """What not to buy yet, and what instead."""
    if finding == "suits":
        what = "fork springs" if axle == "front" else "a rear spring"
        first = f"Do not buy {what}." if plain else f"Do not buy {what} yet."
        are = "springs are" if axle == "front" else "spring is"
        return first, f"If the bike still bottoms or kicks, the {are} not the reason."
    if finding in ("sticks", "odd"):
        return "Do not buy anything yet.", "Measure again first."
    if finding == "open":
        return f"Do not buy {'springs' if axle == 'front' else 'a spring'} on this.", "Book a weigh-in with your tuner."
    order, pick = ("springs", "them") if axle == "front" else ("a spring", "the spring")
    return f"Do not order {order} yet.", f"Book a weigh-in: your tuner picks {pick} by the weight on each wheel."


def narrows_words(causes: Sequence[str]) -> str:
    """The reading that would narrow it most, as a customer would take it or have it taken."""
    return next((words for path in causes if (words := _NARROWS.get(path))), "")


def how_words(chances: dict[Claim, float], draws: int, travel: str, said: bool, axle: Axle = "rear") -> tuple[str, ...]:
    """How a verdict is worked out: the chances as parts of 100 [-], the draws [-], the travel [mm] and whether it was said."""
    parts = of_hundred(chances)
    what, is_, suits = ("springs", "are", "suit") if axle == "front" else ("spring", "is", "suits")
    moves = "fork" if axle == "front" else "rear wheel"
    return (
        f"Each reading was moved by what a tape and scales may be off by, {draws} times, and {'springs' if axle == 'front' else 'a spring'} chosen each time as a tuner would.",
        f"Of 100 such bikes the {what} {is_} too soft for you on {parts['soft']}, {suits} you on {parts['suits']} and {is_} too stiff on {parts['stiff']}.",
        f"The {moves} moves {travel} mm: {'you said so' if said else 'that is usual for this kind of riding, and taken for yours'}.",
        "The usual sags are those of the trade. They are common practice, with no book behind them.",
    )


def of_hundred(chances: dict[Claim, float]) -> dict[Claim, int]:
    """Chances as whole parts of 100 that add up to 100: the largest remainders are rounded up."""
    whole = sum(chances.values())
    exact = {claim: 100.0 * chance / whole for claim, chance in chances.items()}
    parts = {claim: int(part) for claim, part in exact.items()}
    for claim in sorted(exact, key=lambda one: parts[one] - exact[one])[: 100 - sum(parts.values())]:
        parts[claim] += 1
    return parts
