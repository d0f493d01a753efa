"""A bench push: force against stroke of one fork leg, slowly. Results that tell what a sealed cartridge is like by now."""

from __future__ import annotations

from calc.job.field import Default, Field, Kind, Part

_Q = Kind.QUANTITY
_P = Part.PUSH
_LEGS = {"front.air": ("open", "sealed cartridge")}
_READ = ("front.push_points",)
_TRADE = "common practice, no source"

PUSH = (
    Field(
        "front.push_points", "Bench push: stroke and force", _P, Kind.PAIRS, "length", "mm", 30, 420, 1, 0, when=_LEGS, end="front",
        result=True, second_dimension="force", second_unit="N", second_low=0, second_high=20000, fewest=2,
        how="One leg upright on scales that are set to 0 with the leg on them. Push it in slowly, wait at each stroke, read both: 240 320; 260 430; 280 690. Go into the last 50 mm, short of any stop. Stroke: exposed chrome hanging, less exposed chrome now. A scale in kg: write 32.6 kgf.",
    ),
    Field(
        "front.push_correct", "Points of the push", _P, Kind.CHOICE, choices={"yes": "Correct readings", "no": "Only compared"},
        when=_LEGS, default=Default(choice="yes"), end="front", needs=_READ, typed="stated",
        how="Where the kind of fork says what the leg is like, points that differ from what is expected say that a reading of it is off. Corrected, the answer follows; what you typed stays.",
    ),
    Field(
        "front.push_read", "Force read", _P, Kind.CHOICE, choices={"in": "Pushed in", "out": "Let out", "both": "Middle of both"}, when=_LEGS,
        default=Default(choice="in"), end="front", needs=_READ, typed="stated",
        how="Friction adds to what is read going in and takes off what is read coming out. In the middle of both it drops out.",
    ),
    Field(
        "front.push_spring", "Spring during the push", _P, Kind.CHOICE, choices={"out": "Out", "in": "In"}, when=_LEGS,
        default=Default(choice="out"), end="front", needs=_READ, typed="stated",
        how="Out is better: then the gas alone is pushed. Cap back on, the leg bled at full extension.",
    ),
    Field(
        "front.push_bled", "Bled before the push", _P, Kind.CHOICE, choices={"yes": "Yes", "no": "No"}, end="front", needs=_READ, typed="stated",
        when=_LEGS | {"front.push_spring": ("in",)}, default=Default(choice="yes"),
        how="At full extension, by the bleed screw. Not bled, gas that has leaked out of a cartridge is still in the leg.",
    ),
    Field(
        "front.push_leg", "Leg pushed", _P, Kind.CHOICE, choices={"left": "Left", "right": "Right"}, when=_LEGS, default=Default(choice="left"),
        end="front", needs=_READ, typed="stated", how="Its own gap and spring count.",
    ),
    Field(
        "front.push_gap", "Gap last set while sealed", _P, _Q, "length", "mm", 20, 500, 5, 0, plus_minus=2, result=True,
        when={"front.air": ("sealed cartridge",), "front.cartridge_state": ("opened into one",)}, end="front", needs=_READ,
        default=Default(follow="standard.gap", reason=_TRADE),
        how="Around the cartridge as it was before anybody opened it, read the way you read yours.",
    ),
    Field(
        "front.push_friction", "Friction of the leg, pushed slowly", _P, _Q, "force", "N", 0, 200, 1, 0, plus_minus=5, when=_LEGS, result=True,
        default=Default(value=25.0, plus_minus=15.0, reason=f"10 to 40 N; {_TRADE}"), end="front", needs=_READ,
        how="Half of what in and out differ by at one stroke.",
    ),
    Field(
        "front.push_error", "A force is read to ±", _P, _Q, "force", "N", 0.5, 200, 1, 0, when=_LEGS, decision=True, typed="stated",
        default=Default(value=10.0, reason=f"a bathroom scale; {_TRADE}"), end="front", needs=_READ, how="Bathroom scales 10 N, a load cell 1 N.",
    ),
    Field(
        "front.push_stroke_error", "A stroke is read to ±", _P, _Q, "length", "mm", 0.1, 20, 0.5, 1, when=_LEGS, decision=True, typed="stated",
        default=Default(value=1.0, reason=f"an o-ring and a rule; {_TRADE}"), end="front", needs=_READ,
        how="Near full travel 1 mm is worth more than the scale's error.",
    ),
    Field(
        "front.push_scale", "The scale reads high by", _P, _Q, "share", "%", -20, 20, 0.5, 1, plus_minus=1, when=_LEGS, result=True,
        default=Default(value=0.0, plus_minus=2.0, reason=f"bathroom scales; {_TRADE}"), end="front", needs=_READ,
        how="0, with a +/- of 2 % for bathroom scales; against a known weight.",
    ),
)  # fmt: skip
