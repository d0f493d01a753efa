"""Rear: travel, leverage, spring and the shock's gas."""

from __future__ import annotations

from calc.job.field import Default, Field, Kind, Part
from calc.job.fields.wishes import wishes

_Q = Kind.QUANTITY
_R = Part.REAR
_BY_LEVERAGE = {"rear.motion_from": ("leverage",)}

REAR = (
    Field(
        "rear.travel", "Rear wheel travel", _R, _Q, "length", "mm", 20, 450, 5, 0, plus_minus=2, main=True, usual="travel rear",
        default=Default("travel rear"), end="rear", how="Vertical at the axle, from hanging to the first solid stop.", typed="stated",
    ),
    Field(
        "rear.unsprung", "Wheel and swingarm", _R, _Q, "mass", "kg", 4, 90, 0.5, 1, plus_minus=1.5, usual="unsprung rear",
        default=Default("unsprung rear"), when={"rear.unsprung_from": ("whole",)}, end="rear",
        how="Wheel, brake and sprocket, plus the swingarm times how far along its length its balance point lies.",
    ),
    Field(
        "rear.leverage", "Leverage, average (wheel / shock)", _R, _Q, "number", "", 1, 4.5, 0.05, 2, plus_minus_relative=0.02,
        main=True, usual="leverage", default=Default("leverage"), when=_BY_LEVERAGE, end="rear", how="Wheel travel divided by shock stroke. Spring off: measure the shock eye to eye with the wheel hanging and at full travel. Sags read at Check narrow it too.", typed="stated",
    ),
    Field(
        "rear.leverage_fall", "Leverage falls over the travel by", _R, _Q, "share", "%", -20, 60, 1, 0, plus_minus=4, main=True,
        usual="leverage fall", default=Default("leverage fall"), when=_BY_LEVERAGE, end="rear",
        how="From hanging to full travel. Off road, taking it as constant puts the spring 2-3 N/mm out.", typed="stated",
    ),
    Field(
        "rear.shocks", "Shocks", _R, Kind.CHOICE, choices={"1": "One", "2": "Two"}, default=Default(choice="1"), end="rear",
        how="Rates, preload and gas are per shock.", typed="stated",
    ),
    Field(
        "rear.rate", "Spring fitted", _R, _Q, "spring rate", "N/mm", 10, 400, 2, 1, plus_minus_relative=0.03, main=True,
        when={"rear.rate_from": ("marking",), "rear.spring_kind": ("single", "stacked", "nested")},
        usual="shock rate", default=Default("shock rate"), end="rear", how="The marking on the spring, or better a spring tester.", typed="stated",
    ),
    Field(
        "rear.preload", "Preload fitted", _R, _Q, "length", "mm", -10, 60, 1, 0, plus_minus=1, main=True, usual="preload shock",
        default=Default("preload shock"), when={"rear.preload_from": ("read",)}, end="rear", how="Free length minus installed length, shock off the bike at full extension.",
    ),
    Field(
        "rear.buy", "Springs to choose from", _R, Kind.CHOICE, default=Default(choice="series"), end="rear",
        choices={"series": "A stepped series", "stock": "My own stock"}, how="A series sold in equal steps, or what is on your shelf.", typed="stated",
    ),
    Field(
        "rear.step", "Step between springs", _R, _Q, "spring rate", "N/mm", 0.5, 25, 0.5, 1, usual="shock step",
        default=Default("shock step"), when={"rear.buy": ("series",)}, end="rear", how="From the supplier's list.", typed="stated", decision=True,
    ),
    Field(
        "rear.stock", "Rates on the shelf", _R, Kind.RATES, "spring rate", "N/mm", 10, 400, when={"rear.buy": ("stock",)}, end="rear",
        how="Rates per shock, with spaces, commas or semicolons between them: 46 48 50.", typed="stated",
    ),
    Field(
        "rear.preload_min", "Minimum preload", _R, _Q, "length", "mm", 0, 60, 1, 0, end="rear", usual="shock collar",
        default=Default(value=2.0, reason="enough to keep the spring seated; common practice, no source"), how="Collar backed off until the spring just stays seated.", typed="stated", decision=True,
    ),
    Field(
        "rear.preload_max", "Maximum preload", _R, _Q, "length", "mm", 0, 80, 1, 0, end="rear", usual="shock collar",
        default=Default("preload shock", times_high=1.5, reason="half as much again as the top of the usual range; common practice, no source"), how="Collar wound down to the end of its thread.", typed="stated", decision=True,
    ),
    Field(
        "rear.free_length", "Spring free length", _R, _Q, "length", "mm", 80, 500, 1, 0, plus_minus=1, end="rear",
        how="Spring off the shock, on a bench. Leave empty to skip the coil bind check.",
    ),
    Field(
        "rear.solid_length", "Spring solid length", _R, _Q, "length", "mm", 20, 400, 1, 0, plus_minus=1, end="rear",
        how="All coils touching. Leave empty to skip the coil bind check.",
    ),
    Field(
        "rear.rod_diameter", "Shock rod diameter", _R, _Q, "length", "mm", 6, 30, 0.5, 1, plus_minus=0.05, usual="shock rod",
        default=Default("shock rod"), end="rear", how="By vernier.",
    ),
    Field(
        "rear.charge", "Shock gas charge", _R, _Q, "pressure", "bar", 0, 40, 0.5, 1, plus_minus=1, usual="shock charge",
        default=Default("shock charge"), end="rear", how="Gauge pressure at full extension, where it was filled. Never open it: a licensed workshop charges it.", typed="stated",
    ),
    Field(
        "rear.gas_volume", "Shock gas volume", _R, _Q, "volume", "ml", 5, 1000, 5, 0, plus_minus=10, end="rear",
        how="In the reservoir at full extension. Leave it empty and the charge counts as constant over the stroke.",
    ),
    Field(
        "rear.target_sag", "Rider sag wanted", _R, _Q, "length", "mm", 5, 250, 1, 0, main=True, usual="rider sag rear",
        default=Default("rider sag rear", share_of="rear.travel"), end="rear", how="Vertical at the axle, in the usual riding position: standing off road, sitting on the road. Or in % of travel.", typed="stated", decision=True,
        percent_of="rear.travel",
    ),
    *wishes("rear", _R, "Vertical at the axle"),
    Field(
        "rear.friction", "Friction at the wheel", _R, _Q, "force", "N", 0, 400, 1, 0, plus_minus=15,
        usual="friction rear at the wheel", default=Default("friction rear at the wheel"), end="rear",
        how="Half the spread of two sag readings, times the wheel rate: Check works it out from sags read twice.",
    ),
    Field(
        "rear.tried_rate", "Try spring", _R, _Q, "spring rate", "N/mm", 10, 400, 2, 1, end="rear", typed="stated", decision=True,
        how="A spring to compare with the answer: another step, or the measured rate of the spring you were sent. Leave empty to keep the answer's.",
    ),
    Field(
        "rear.tried_preload", "Try preload", _R, _Q, "length", "mm", -10, 80, 1, 0, end="rear", typed="stated", decision=True,
        how="A preload to compare with the answer. Leave empty to keep the answer's.",
    ),
    Field(
        "rear.built_rate", "Spring built", _R, _Q, "spring rate", "N/mm", 10, 400, 2, 1, plus_minus_relative=0.03, end="rear", typed="stated",
        how="What went in, per shock: the marking, or better the spring's own measured rate.",
    ),
    Field(
        "rear.built_preload", "Preload built", _R, _Q, "length", "mm", -10, 80, 1, 0, plus_minus=1, end="rear", typed="measured",
        how="Free length less installed length, as it was set.",
    ),
)  # fmt: skip
