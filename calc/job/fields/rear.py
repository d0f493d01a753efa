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
        how="Wheel, brake, sprocket, and the swingarm times where its balance point lies along its length.",
    ),
    Field(
        "rear.leverage", "Leverage, average (wheel / shock)", _R, _Q, "number", "", 1, 4.5, 0.05, 2, plus_minus_relative=0.02,
        main=True, usual="leverage", default=Default("leverage"), when=_BY_LEVERAGE, end="rear", how="Wheel travel over shock stroke.", typed="stated",
    ),
    Field(
        "rear.leverage_fall", "Leverage falls over the travel by", _R, _Q, "share", "%", -20, 60, 1, 0, plus_minus=4, main=True,
        usual="leverage fall", default=Default("leverage fall"), when=_BY_LEVERAGE, end="rear",
        how="From hanging to full travel. Taking it as constant costs 2-3 N/mm of spring against the usual fall off road.", typed="stated",
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
        default=Default("preload shock"), when={"rear.preload_from": ("read",)}, end="rear", how="Free length less installed length, shock off the bike at full extension.",
    ),
    Field(
        "rear.buy", "Springs to choose from", _R, Kind.CHOICE, default=Default(choice="series"), end="rear",
        choices={"series": "A stepped series", "stock": "My own stock"}, how="The step that springs are sold in, or your shelf.", typed="stated",
    ),
    Field(
        "rear.step", "Step of the series", _R, _Q, "spring rate", "N/mm", 0.5, 25, 0.5, 1, usual="shock step",
        default=Default("shock step"), when={"rear.buy": ("series",)}, end="rear", how="From the seller's list.", typed="stated", decision=True,
    ),
    Field(
        "rear.stock", "Rates on the shelf", _R, Kind.RATES, "spring rate", "N/mm", 10, 400, when={"rear.buy": ("stock",)}, end="rear",
        how="Rates per shock, separated by spaces or semicolons: 46 48 50.", typed="stated",
    ),
    Field(
        "rear.preload_min", "Least preload", _R, _Q, "length", "mm", 0, 60, 1, 0, end="rear", usual="shock collar",
        default=Default(value=2.0, reason="enough to keep the spring seated; common practice, no source"), how="Collar backed off until the spring just stays seated.", typed="stated", decision=True,
    ),
    Field(
        "rear.preload_max", "Most preload", _R, _Q, "length", "mm", 0, 80, 1, 0, end="rear", usual="shock collar",
        default=Default("preload shock", times_high=1.5, reason="half as much again as the top of the usual range; common practice, no source"), how="Until the collar's thread ends.", typed="stated", decision=True,
    ),
    Field(
        "rear.free_length", "Spring's free length", _R, _Q, "length", "mm", 80, 500, 1, 0, plus_minus=1, end="rear",
        how="Off the shock, on a table. Empty: coil bind is not checked.",
    ),
    Field(
        "rear.solid_length", "Spring's solid length", _R, _Q, "length", "mm", 20, 400, 1, 0, plus_minus=1, end="rear",
        how="All coils touching. Empty: coil bind is not checked.",
    ),
    Field(
        "rear.rod_diameter", "Shock rod", _R, _Q, "length", "mm", 6, 30, 0.5, 1, plus_minus=0.05, usual="shock rod",
        default=Default("shock rod"), end="rear", how="By vernier.",
    ),
    Field(
        "rear.charge", "Shock gas charge", _R, _Q, "pressure", "bar", 0, 40, 0.5, 1, plus_minus=1, usual="shock charge",
        default=Default("shock charge"), end="rear", how="Gauge pressure at full extension, where it was filled. Never open it: a licensed workshop charges it.", typed="stated",
    ),
    Field(
        "rear.gas_volume", "Shock gas volume", _R, _Q, "volume", "ml", 5, 1000, 5, 0, plus_minus=10, end="rear",
        how="In the reservoir at full extension. Empty: the charge is taken as constant over the stroke, and the page says so.",
    ),
    Field(
        "rear.target_sag", "Rider sag wanted", _R, _Q, "length", "mm", 5, 250, 1, 0, main=True, usual="rider sag rear",
        default=Default("rider sag rear", share_of="rear.travel"), end="rear", how="Vertical at the axle, in the posture of the use; or in % of travel.", typed="stated", decision=True,
        percent_of="rear.travel",
    ),
    *wishes("rear", _R, "Vertical at the axle"),
    Field(
        "rear.friction", "Friction at the wheel", _R, _Q, "force", "N", 0, 400, 1, 0, plus_minus=15,
        usual="friction rear at the wheel", default=Default("friction rear at the wheel"), end="rear",
        how="Half the spread of two sag readings, times the wheel rate.",
    ),
    Field(
        "rear.tried_rate", "Try spring", _R, _Q, "spring rate", "N/mm", 10, 400, 2, 1, end="rear", typed="stated", decision=True,
        how="A spring to look at beside the answer: another step, or the delivered spring's measured rate. Empty: the answer's.",
    ),
    Field(
        "rear.tried_preload", "Try preload", _R, _Q, "length", "mm", -10, 80, 1, 0, end="rear", typed="stated", decision=True,
        how="A preload to look at beside the answer. Empty: the answer's.",
    ),
)  # fmt: skip
