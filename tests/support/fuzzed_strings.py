"""Text as fingers, clipboards and other keyboards make it: numbers, marks, units and rubbish put together. Seeded."""

from __future__ import annotations

from random import Random

from calc.quantities.units import ALIASES, DIMENSIONS
from tests.support import bad_strings

SIGNS = ("", "", "", "", "-", "+", "−", "--", "±", "~")
MARKS = (".", ",", "'", " ", "\u00a0", ";", "/", "_", "..", "\u2009", "")
POWERS = ("", "", "", "e", "E3", "e-2", "e+400", "e99999", "e1_0", "**2", "^2")
SPACES = ("", " ", " ", "\u00a0", "\t", "\n", "  ")
UNITS = (
    "",
    "",
    *sorted(ALIASES),
    *(unit for dimension in DIMENSIONS.values() for unit in dimension.units),
    "oz",
    "fl oz",
    "st 4 lb",
    "bananas",
)


def fuzzed(rng: Random, dimension: str) -> str:
    """One text: most of them nearly a number and a unit, often one of the dimension, the rest anything."""
    kind = rng.random()
    if kind < 0.6:
        unit = rng.choice(list(DIMENSIONS[dimension].units) if rng.random() < 0.6 else UNITS)
        return f"{rng.choice(SPACES)}{number(rng)}{rng.choice(SPACES)}{unit}{rng.choice(SPACES)}"
    if kind < 0.75:
        between = rng.choice((" ", "; ", ", ", ",", "/", " - ", "\n", ";"))
        return between.join(f"{number(rng)} {rng.choice(UNITS)}".strip() for _ in range(rng.randrange(1, 9)))
    if kind < 0.9:
        return "".join(rng.choice("0123456789.,+-eE /;'°%kgmNblinst\u00a0") for _ in range(rng.randrange(45)))
    if kind < 0.95:
        return "".join(chr(rng.randrange(0x110000)) for _ in range(rng.randrange(1, 12)))
    text = list(rng.choice(bad_strings.ALL))
    text[rng.randrange(len(text) + 1) :] = rng.choice(("", "4", " mm", "\u0301", ",000", "e9"))
    return "".join(text)


def number(rng: Random) -> str:
    """A number, plain or grouped, pointed and signed in any way."""
    if rng.random() < 0.4:
        return f"{10 ** rng.uniform(-3, 5):.{rng.randrange(4)}f}".replace(".", rng.choice(".,"))
    groups = [
        "".join(rng.choice("0123456789") for _ in range(rng.choice((1, 1, 2, 3, 3, 4))))
        for _ in range(rng.choice((1, 1, 1, 2, 2, 3)))
    ]
    mark = rng.choice(MARKS)
    return f"{rng.choice(SIGNS)}{mark.join(groups) if rng.random() < 0.8 else rng.choice(MARKS).join(groups) + rng.choice(MARKS)}{rng.choice(POWERS)}"
