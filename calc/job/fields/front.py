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
    "standard": "As strong as standard, for your load",
    "multiple": "A multiple of the rider load",
    "force": "A set force at the wheel",
    "energy": "A landing energy",
}

FRONT = (
    Field(
        "front.travel", "Fork travel", _S, _Q, "length", "mm", 20, 400, 5, 0, plus_minus=2, main=True, usual="travel front",
        default=Default("travel front"), end="front", how="Along the leg, from hanging to the first solid stop; or from the manual. Air fork: from the leg held fully out.", typed="stated",
    ),
    Field(
        "front.unsprung", "Wheel and lower legs", _S, _Q, "mass", "kg", 4, 60, 0.5, 1, plus_minus=1.5, main=True,
        usual="unsprung front", default=Default("unsprung front"), end="front",
        how="Wheel, tyre, brake, axle and everything that moves with them, plus half the springs: weigh what you can.",
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
        how=f"The other rate is then the left leg's. {_MARK}", typed="stated",
    ),
    Field(
        "front.preload", "Preload fitted", _S, _Q, "length", "mm", -20, 60, 1, 0, plus_minus=1, main=True, usual="preload fork",
        default=Default("preload fork"), when={"front.preload_from": ("read",)}, end="front",
        how="Free length plus spacers, minus the space at full extension, the leg hanging on its top-out spring.",
    ),
    Field(
        "front.buy", "Springs to choose from", _S, Kind.CHOICE, end="front", default=Default(choice="series"),
        choices=_BUY, how="A series sold in equal steps, or what is on your shelf.", typed="stated",
    ),
    Field(
        "front.step", "Step between springs", _S, _Q, "spring rate", "N/mm", 0.05, 2, 0.05, 2, usual="fork step",
        default=Default("fork step"), when={"front.buy": ("series", "series-pairs")}, end="front", how="From the supplier's list.", typed="stated", decision=True,
    ),
    Field(
        "front.stock", "Rates on the shelf", _S, Kind.RATES, "spring rate", "N/mm", 1, 30, when={"front.buy": ("stock", "stock-pairs")},
        end="front", how="Rates per leg, with spaces, commas or semicolons between them: 4.2 4.4 4.6.", typed="stated",
    ),
    Field(
        "front.preload_min", "Minimum preload", _S, _Q, "length", "mm", 0, 60, 1, 0, end="front",
        default=Default(value=0.0, reason="a spring that is never loose; common practice, no source"), how="With the shortest spacer, adjuster backed out.", typed="stated", decision=True,
    ),
    Field(
        "front.preload_max", "Maximum preload", _S, _Q, "length", "mm", 0, 80, 1, 0, usual="fork adjuster",
        default=Default("preload fork", times_high=1.5, reason="half as much again as the top of the usual range; common practice, no source"),
        end="front", how="With the longest spacer that still lets you start the cap by hand.", typed="stated", decision=True,
    ),
    Field(
        "front.free_length", "Spring free length", _S, _Q, "length", "mm", 100, 700, 1, 0, plus_minus=1,
        usual="fork spring free length", default=Default("fork spring free length"), end="front", how="Spring out of the leg, lying on a bench.",
    ),
    Field(
        "front.solid_length", "Spring solid length", _S, _Q, "length", "mm", 20, 500, 1, 0, plus_minus=1, end="front",
        how="All coils touching: with ground ends, total coils times wire diameter. Leave empty to skip the coil bind check.",
    ),
    Field(
        "front.target_sag", "Rider sag wanted", _S, _Q, "length", "mm", 5, 200, 1, 0, main=True, usual="rider sag front",
        default=Default("rider sag front", share_of="front.travel"), end="front", how="Along the leg, in the usual riding position: standing off road, sitting on the road. Or in % of travel.", typed="stated", decision=True,
        percent_of="front.travel",
    ),
    *wishes("front", _S, "Along the leg"),
    Field(
        "front.end_target", "At full travel", _S, Kind.CHOICE, choices=END_TARGETS, default=Default(choice="standard"), end="front",
        how="How strong the fork should be at full travel.", typed="stated",
    ),
    Field(
        "front.end_multiple", "Force at full travel, times rider load", _S, _Q, "number", "", 1, 20, 0.1, 1, usual="end multiple front",
        default=Default("end multiple front"), when={"front.end_target": ("multiple",)}, end="front",
        how="Force at the wheel at full travel, divided by the sprung load with the rider aboard.", typed="stated", decision=True,
    ),
    Field(
        "front.end_force", "Force wanted at full travel", _S, _Q, "force", "kN", 0.2, 30, 0.1, 2, when={"front.end_target": ("force",)},
        end="front", how="Vertical, at the wheel, both legs together, springs and gas.", typed="stated", decision=True,
    ),
    Field(
        "front.end_energy", "Landing energy wanted", _S, _Q, "energy", "J", 20, 5000, 10, 0, when={"front.end_target": ("energy",)},
        end="front", how="From hanging to full travel, both legs together, springs and gas, as in a landing.", typed="stated", decision=True,
    ),
    Field(
        "front.friction", "Friction per leg", _S, _Q, "force", "N", 0, 300, 1, 0, plus_minus=10, usual="friction per leg, ridden",
        default=Default("friction per leg, ridden"), end="front", how="Half the spread of two sag readings, times the wheel rate, divided by two for one leg: Check works it out from sags read twice.",
    ),
    Field(
        "front.tried_rate", "Try springs", _S, _Q, "spring rate", "N/mm", 1, 30, 0.2, 2, end="front", typed="stated", decision=True,
        how="A spring to compare with the answer: another step, or the measured rate of the spring you were sent. Leave empty to keep the answer's.",
    ),
    Field(
        "front.tried_preload", "Try preload", _S, _Q, "length", "mm", -20, 80, 1, 0, end="front", typed="stated", decision=True,
        how="A preload to compare with the answer. Leave empty to keep the answer's.",
    ),
    Field(
        "front.tried_gap", "Try gap", Part.OIL, _Q, "length", "mm", 20, 500, 5, 0, end="front", typed="stated", decision=True,
        how="A gap to compare with the answer. Leave empty to keep the answer's.",
    ),
    Field(
        "front.built_rate", "Springs built", _S, _Q, "spring rate", "N/mm", 1, 30, 0.2, 2, plus_minus_relative=0.03, end="front", typed="stated",
        how="What went in, per leg: the left one where they differ. The marking, or better the spring's own measured rate.",
    ),
    Field(
        "front.built_rate_right", "Spring built, right leg", _S, _Q, "spring rate", "N/mm", 1, 30, 0.2, 2, plus_minus_relative=0.03,
        end="front", typed="stated", how="Only where the legs differ. Empty: as in the left leg.",
    ),
    Field(
        "front.built_preload", "Preload built", _S, _Q, "length", "mm", -20, 80, 1, 0, plus_minus=1, end="front", typed="measured",
        how="As it was set, at full extension once the top-out spring balances.",
    ),
    Field(
        "front.built_gap_left", "Gap built, left", Part.OIL, _Q, "length", "mm", 20, 350, 1, 0, plus_minus=2, end="front", typed="measured",
        how="Read back after bleeding, the same way as the gap found.",
    ),
    Field(
        "front.built_gap_right", "Gap built, right", Part.OIL, _Q, "length", "mm", 20, 350, 1, 0, plus_minus=2, end="front", typed="measured",
        how="Read back after bleeding, the same way as the gap found.",
    ),
    Field(
        "front.built_pressure", "Pressure built", Part.OIL, _Q, "pressure", "bar", 0.5, 25, 0.1, 1, plus_minus=0.1, when={"front.air": ("air leg",)},
        end="front", typed="measured", how="As the gauge showed it, cold, its hose on, the wheel off the ground.",
    ),
)  # fmt: skip
