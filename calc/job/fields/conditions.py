"""Hot, high and others: the other conditions that the built setup is looked at under."""

from __future__ import annotations

from calc.job.field import Default, Field, Kind, Part

_Q = Kind.QUANTITY
_C = Part.CONDITIONS

CONDITIONS = (
    Field(
        "conditions.hot_temperature", "Fork when hot", _C, _Q, "temperature", "°C", -30, 120, 5, 0, main=True, typed="stated", decision=True,
        default=Default(value=50.0, reason="a hard ride in summer; common practice, no source"),
        how="Leg temperature after a hard stint, with a contact thermometer on the outer tube.",
    ),
    Field(
        "conditions.high_altitude", "Altitude", _C, _Q, "length", "m", -400, 5000, 50, 0, main=True, typed="stated", decision=True,
        default=Default(value=1800.0, reason="a high pass; common practice, no source"), how="From a map: the highest place that it is ridden at.",
    ),
    Field(
        "conditions.rider", "Another rider, in full kit", _C, _Q, "mass", "kg", 20, 200, 1, 0, main=True, typed="stated", decision=True,
        how="Someone else riding the bike as built. Leave empty to skip.",
    ),
    Field(
        "conditions.luggage", "Extra luggage", _C, _Q, "mass", "kg", 0, 120, 1, 0, main=True, typed="stated", decision=True,
        how="On top of what the bike already carries. Leave empty to skip.",
    ),
    Field(
        "conditions.luggage_front_share", "Extra luggage, weight on the front", _C, _Q, "share", "%", -30, 100, 1, 0, typed="stated", decision=True,
        needs=("conditions.luggage",), default=Default(value=5.0, reason="cases behind the rider; common practice, no source"),
        how="What the front axle gains with the luggage on, divided by its weight.",
    ),
)  # fmt: skip
