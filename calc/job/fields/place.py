"""Where the legs were bled and where the bike is ridden, and how the gas is taken to behave."""

from __future__ import annotations

from calc.job.field import Default, Field, Kind, Part

_Q = Kind.QUANTITY
_O = Part.OIL
_SEA = Default(value=0.0, plus_minus=500.0, reason="sea level, since no altitude is entered")

PLACE = (
    Field(
        "place.bled_altitude", "Bled at", _O, _Q, "length", "m", -400, 5000, 50, 0, plus_minus=50, main=True, default=_SEA,
        unless=(("place.bled_pressure",),), end="both", how="Altitude from a map, where the bleed screws were last opened.",
    ),
    Field(
        "place.ridden_altitude", "Ridden at", _O, _Q, "length", "m", -400, 5000, 50, 0, plus_minus=50, main=True,
        default=Default(follow="place.bled_altitude"), unless=(("place.ridden_pressure",),), end="both",
        how="Altitude from a map, where the setup has to be right.",
    ),
    Field(
        "place.bled_pressure", "Barometer where bled", _O, _Q, "pressure", "hPa", 500, 1100, 1, 0, plus_minus=2, end="both",
        how="The actual pressure there, as a barometer on the bench shows it; not the sea-level figure of a forecast.",
    ),
    Field(
        "place.ridden_pressure", "Barometer where ridden", _O, _Q, "pressure", "hPa", 500, 1100, 1, 0, plus_minus=2, end="both",
        how="The actual pressure there, as a barometer on the spot shows it; not the sea-level figure of a forecast.",
    ),
    Field(
        "place.bled_stroke", "Bled with the leg pushed in by", _O, _Q, "length", "mm", 0, 300, 5, 0, plus_minus=2, end="front",
        default=Default(value=0.0, reason="wheel off the ground, as the cautions ask"), how="0 with the wheel off the ground.",
    ),
    Field(
        "place.ridden_temperature", "Leg temperature in use", _O, _Q, "temperature", "°C", -30, 120, 5, 0, plus_minus=3,
        default=Default(follow="place.bled_temperature"), end="both", how="By a stick-on or infrared thermometer on the outer tube, after a ride. Leave empty for the same as when bled.",
    ),
    Field(
        "place.bled_temperature", "Leg temperature when bled", _O, _Q, "temperature", "°C", -30, 80, 5, 0, plus_minus=3,
        default=Default(value=20.0, plus_minus=3.0, reason="a workshop's temperature"), needs=("place.ridden_temperature",), end="both",
        how="When the gap was read and the bleed screws were last opened.",
    ),
    Field(
        "place.exponent", "Gas exponent, riding", _O, _Q, "number", "", 1, 1.4, 0.01, 2, plus_minus=0.07, end="both",
        usual="gas exponent, riding", default=Default(value=1.33, plus_minus=0.07, reason="no published value for a fork was found; the band 1.0-1.4 is drawn"),
        how="1.0 is slow (sag, bench); 1.4 is too quick to lose heat. Only a travel mark from a known landing narrows it.", typed="stated",
    ),
)  # fmt: skip
