"""Front springs and sag: the fork's travel, what is fitted, what can be bought, what is wanted."""

from __future__ import annotations

from calc.job.field import Default, Field, Kind, Part
from calc.job.fields.wishes import wishes

_Q = Kind.QUANTITY
_S = Part.SPRINGS
_MARK = "The marking on the spring, or better a spring tester."

_BUY = {
    "series": "A stepped series",
    "stock": "My own stock",
    "series-pairs": "A stepped series, unequal pairs too",
    "stock-pairs": "My own stock, unequal pairs too",
}

END_TARGETS = {
    "standard": "As much as the standard rider on the standard setup",
    "multiple": "A multiple of the static rider load",
    "force": "A force at the wheel",
    "energy": "An energy from hanging to full travel",
}

FRONT = (
    Field(
        "front.travel", "Fork travel", _S, _Q, "length", "mm", 20, 400, 5, 0, plus_minus=2, main=True, usual="travel front",
        default=Default("travel front"), end="front", how="Along the leg, from hanging to the first solid stop; the manual's value. Air fork: from the leg held out.", typed="stated",
    ),
    Field(
        "front.unsprung", "Wheel and lower legs", _S, _Q, "mass", "kg", 4, 60, 0.5, 1, plus_minus=1.5, main=True,
        usual="unsprung front", default=Default("unsprung front"), end="front",
        how="Wheel, tyre, brake, axle and all that moves with them, with half of the springs: weigh what you can.",
    ),
    Field(
        "front.springs_in", "Springs in", _S, Kind.CHOICE, when={"front.spring_kind": ("single", "stacked", "nested", "progressive")}, choices={"both": "Both legs", "one": "One leg"}, end="front",
        default=Default(choice="both"), how="Some forks carry a spring in one leg only.", typed="stated",
    ),
    Field(
        "front.rate", "Springs fitted", _S, _Q, "spring rate", "N/mm", 1, 30, 0.2, 2, plus_minus_relative=0.03, main=True,
        when={"front.rate_from": ("marking",), "front.spring_kind": ("single", "unequal", "stacked", "nested")},
        usual="fork rate", default=Default("fork rate"), end="front", how=f"Per leg. {_MARK}", typed="stated",
        pair="For a different rate in each leg, choose that as the kind of spring, then enter one rate for each leg.",
    ),
    Field(
        "front.rate_right", "Spring fitted, right leg", _S, _Q, "spring rate", "N/mm", 1, 30, 0.2, 2, plus_minus_relative=0.03, main=True,
        when={"front.spring_kind": ("unequal",)}, default=Default(follow="front.rate"), end="front",
        how=f"The other one then stands for the left leg. {_MARK}", typed="stated",
    ),
    Field(
        "front.preload", "Preload fitted", _S, _Q, "length", "mm", -20, 60, 1, 0, plus_minus=1, main=True, usual="preload fork",
        default=Default("preload fork"), when={"front.preload_from": ("read",)}, end="front",
        how="Free length plus spacers, less the space at full extension once the top-out spring balances.",
    ),
    Field(
        "front.buy", "Springs to choose from", _S, Kind.CHOICE, end="front", default=Default(choice="series"),
        choices=_BUY, how="The step that springs are sold in, or your shelf.", typed="stated",
    ),
    Field(
        "front.step", "Step of the series", _S, _Q, "spring rate", "N/mm", 0.05, 2, 0.05, 2, usual="fork step",
        default=Default("fork step"), when={"front.buy": ("series", "series-pairs")}, end="front", how="From the seller's list.", typed="stated", decision=True,
    ),
    Field(
        "front.stock", "Rates on the shelf", _S, Kind.RATES, "spring rate", "N/mm", 1, 30, when={"front.buy": ("stock", "stock-pairs")},
        end="front", how="Rates per leg, separated by spaces or semicolons: 4.2 4.4 4.6.", typed="stated",
    ),
    Field(
        "front.preload_min", "Least preload that can be built", _S, _Q, "length", "mm", 0, 60, 1, 0, end="front",
        default=Default(value=0.0, reason="a spring that is never loose; common practice, no source"), how="With the shortest spacer, adjuster out.", typed="stated", decision=True,
    ),
    Field(
        "front.preload_max", "Most preload that can be built", _S, _Q, "length", "mm", 0, 80, 1, 0, usual="fork adjuster",
        default=Default("preload fork", times_high=1.5, reason="half as much again as the top of the usual range; common practice, no source"),
        end="front", how="With the longest spacer that still lets the cap start by hand.", typed="stated", decision=True,
    ),
    Field(
        "front.free_length", "Spring's free length", _S, _Q, "length", "mm", 100, 700, 1, 0, plus_minus=1,
        usual="fork spring free length", default=Default("fork spring free length"), end="front", how="Out of the leg, on a table.",
    ),
    Field(
        "front.solid_length", "Spring's solid length", _S, _Q, "length", "mm", 20, 500, 1, 0, plus_minus=1, end="front",
        how="All coils touching: total coils times wire for ground ends. Empty: coil bind is not checked.",
    ),
    Field(
        "front.target_sag", "Rider sag wanted", _S, _Q, "length", "mm", 5, 200, 1, 0, main=True, usual="rider sag front",
        default=Default("rider sag front", share_of="front.travel"), end="front", how="Along the leg, in the posture of the use; or in % of travel.", typed="stated", decision=True,
        percent_of="front.travel",
    ),
    *wishes("front", _S, "Along the leg"),
    Field(
        "front.end_target", "At full travel", _S, Kind.CHOICE, choices=END_TARGETS, default=Default(choice="standard"), end="front",
        how="What the fork should have left when it reaches the end of its travel.", typed="stated",
    ),
    Field(
        "front.end_multiple", "End force over static rider load", _S, _Q, "number", "", 1, 20, 0.1, 1, usual="end multiple front",
        default=Default("end multiple front"), when={"front.end_target": ("multiple",)}, end="front",
        how="End force at the wheel over the sprung load with the rider aboard.", typed="stated", decision=True,
    ),
    Field(
        "front.end_force", "End force wanted", _S, _Q, "force", "kN", 0.2, 30, 0.1, 2, when={"front.end_target": ("force",)},
        end="front", how="Vertical, at the wheel, both legs, at full travel, springs and gas.", typed="stated", decision=True,
    ),
    Field(
        "front.end_energy", "Landing energy wanted", _S, _Q, "energy", "J", 20, 5000, 10, 0, when={"front.end_target": ("energy",)},
        end="front", how="From hanging to full travel, both legs, springs and gas moving fast from extension.", typed="stated", decision=True,
    ),
    Field(
        "front.friction", "Friction per leg", _S, _Q, "force", "N", 0, 300, 1, 0, plus_minus=10, usual="friction per leg, ridden",
        default=Default("friction per leg, ridden"), end="front", how="Half the spread of two sag readings, times the wheel rate, halved per leg.",
    ),
    Field(
        "front.tried_rate", "Try springs", _S, _Q, "spring rate", "N/mm", 1, 30, 0.2, 2, end="front", typed="stated", decision=True,
        how="A spring to look at beside the answer: another step, or the delivered spring's measured rate. Empty: the answer's.",
    ),
    Field(
        "front.tried_preload", "Try preload", _S, _Q, "length", "mm", -20, 80, 1, 0, end="front", typed="stated", decision=True,
        how="A preload to look at beside the answer. Empty: the answer's.",
    ),
    Field(
        "front.tried_gap", "Try gap", Part.OIL, _Q, "length", "mm", 20, 500, 5, 0, end="front", typed="stated", decision=True,
        how="A gap to look at beside the answer. Empty: the answer's.",
    ),
)  # fmt: skip
