"""A spring's wire and coil: the fields are the same for a fork and a shock, so they are declared once for both."""

from __future__ import annotations

from calc.job.field import Default, Field, Kind, Part
from calc.practice import Axle
from calc.springs.steel import END_TYPES, GRADES

_Q = Kind.QUANTITY


def coil_fields(axle: Axle, part: Part, wire: tuple[float, float], coil: tuple[float, float]) -> tuple[Field, ...]:
    """Fields of wire and coil for one end, with the limits [mm] of wire and of the coil's outside."""
    linear = {f"{axle}.spring_kind": ("single", "unequal", "stacked", "nested")}
    by_wire, by_tester = (linear | {f"{axle}.rate_from": (how,)} for how in ("wire", "tester"))
    longest = 300.0 if axle == "front" else 150.0
    modulus = {key: (grade.shear_modulus / 1000.0, grade.plus_minus_95 / 1000.0) for key, grade in GRADES.items()}
    return (
        Field(
            f"{axle}.rate_from", "Rate known from", part, Kind.CHOICE, end=axle, when=linear, default=Default(choice="marking"), typed="stated",
            choices={"marking": "Its marking or a tester", "wire": "Wire and coil", "tester": "Points from a tester"},
            how="A tester is best, +/-1 %. Worked out from wire and coil, a rate is no better than 2-3 % for the steel alone, and it goes with the fourth power of the wire.",
        ),
        Field(
            f"{axle}.tester", "Tester: compression and force", part, Kind.PAIRS, "length", "mm", 0, longest, main=True, when=by_tester, end=axle,
            second_dimension="force", second_unit="N", second_low=0, second_high=30000, fewest=3,
            how="From the first touch on, three points or more, spread over what the spring is pressed by in the bike: 20 84; 60 252; 100 421.",
        ),
        Field(
            f"{axle}.tester_error", "Error of the tester", part, _Q, "share", "%", -20, 20, 0.5, 1, plus_minus=1, when=by_tester,
            default=Default(value=0.0, plus_minus=1.0, reason="a spring tester; common practice, no source"), end=axle,
            how="0, with a +/- of 1 % for a spring tester, 3 % for a drill press on bathroom scales.",
        ),
        Field(
            f"{axle}.wire", "Wire diameter", part, _Q, "length", "mm", *wire, 0.05, 2, plus_minus=0.05, when=by_wire, end=axle, main=True,
            how="By vernier on bare steel; 0.1 mm of paint is 9 % of rate.",
        ),
        Field(
            f"{axle}.coil_diameter", "Coil outside diameter", part, _Q, "length", "mm", *coil, 0.1, 1, plus_minus=0.1, when=by_wire, end=axle,
            main=True, how="By vernier.",
        ),
        Field(
            f"{axle}.coils", "Total coils", part, _Q, "number", "", 2, 120, 0.25, 2, plus_minus=0.1, when=by_wire, end=axle, main=True,
            how="Count from tip to tip, to the quarter turn.",
        ),
        Field(
            f"{axle}.coil_ends", "Spring ends", part, Kind.CHOICE, choices={name: name.capitalize() for name in END_TYPES},
            default=Default(choice="squared, ground"), when=by_wire, end=axle, typed="stated", how="Squared: the last coil is closed. Ground: it is flat.",
        ),
        Field(
            f"{axle}.grade", "Spring steel grade", part, Kind.CHOICE, choices={key: grade.label for key, grade in GRADES.items()},
            default=Default(choice="oil-tempered"), when=by_wire, end=axle, typed="stated", how="From the maker; you cannot see it.",
        ),
        Field(
            f"{axle}.shear_modulus", "Shear modulus of the steel", part, _Q, "pressure", "GPa", 60, 90, 0.1, 1, plus_minus=1, when=by_wire, end=axle, typed="stated",
            default=Default(follow=f"{axle}.grade", by_choice=modulus, reason="its +/- covers what the sources disagree by"),
            how="From the maker of the wire. Leave empty to use the grade's.",
        ),
    )  # fmt: skip
