"""The units people may type, by dimension, and their definitions for pint. Data only."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass


@dataclass(frozen=True)
class Dimension:
    """A kind of quantity: its internal unit, and the accepted units with their definition's name in the pint registry."""

    internal: str
    units: Mapping[str, str]


DIMENSIONS: Mapping[str, Dimension] = {
    "length": Dimension(
        "mm", {"mm": "millimetre", "cm": "centimetre", "m": "metre", "km": "kilometre", "in": "inch", "ft": "foot"}
    ),
    "mass": Dimension("kg", {"kg": "kilogram", "g": "gram", "lb": "pound", "st": "stone"}),
    "spring rate": Dimension(
        "N/mm",
        {
            "N/mm": "newton / millimetre",
            "kgf/mm": "kilogram_force / millimetre",
            "lbf/in": "pound_force / inch",
            "N/m": "newton / metre",
            "N/cm": "newton / centimetre",
        },
    ),
    "force": Dimension("N", {"N": "newton", "kN": "kilonewton", "kgf": "kilogram_force", "lbf": "pound_force"}),
    "energy": Dimension("N mm", {"N mm": "newton * millimetre", "J": "joule"}),
    "volume": Dimension(
        "mm3",
        {
            "mm3": "millimetre ** 3",
            "ml": "millilitre",
            "l": "litre",
            "US fl oz": "us_fluid_ounce",
            "imp fl oz": "imperial_fluid_ounce",
        },
    ),
    "pressure": Dimension(
        "MPa",
        {
            "MPa": "megapascal",
            "bar": "bar",
            "psi": "psi",
            "hPa": "hectopascal",
            "kPa": "kilopascal",
            "Pa": "pascal",
            "atm": "atmosphere",
            "GPa": "gigapascal",
        },
    ),
    "angle": Dimension("rad", {"rad": "radian", "°": "degree"}),
    "temperature": Dimension("K", {"K": "kelvin", "°C": "degree_celsius", "°F": "degree_fahrenheit"}),
    "share": Dimension("1", {"1": "radian", "%": "percent"}),
    "number": Dimension("", {"": "radian"}),
    "kinematic viscosity": Dimension("mm²/s", {"mm²/s": "millimetre ** 2 / second", "cSt": "centistokes"}),
    "density": Dimension("kg/m³", {"kg/m³": "kilogram / metre ** 3", "g/ml": "gram / millilitre"}),
    "frequency": Dimension("Hz", {"Hz": "hertz"}),
    "acceleration": Dimension("m/s²", {"m/s²": "metre / second ** 2", "G": "standard_gravity"}),
    "speed": Dimension("mm/s", {"m/s": "metre / second", "mm/s": "millimetre / second", "in/s": "inch / second"}),
    "time": Dimension("s", {"s": "second", "h": "hour"}),
}

# Other spellings, in lower case. "kg/mm" is what the trade writes for kgf/mm; common practice, no source.
ALIASES: Mapping[str, tuple[str, ...]] = {
    "mm": ("mm",), "millimetres": ("mm",), "millimeters": ("mm",), "cm": ("cm",), "m": ("m",), "km": ("km",),
    "in": ("in",), "inch": ("in",), "inches": ("in",), '"': ("in",), "ft": ("ft",), "feet": ("ft",), "'": ("ft",),
    "kg": ("kg",), "kgs": ("kg",), "kilos": ("kg",), "g": ("g", "G"), "lb": ("lb",), "lbs": ("lb",), "pounds": ("lb",),
    "st": ("st",), "stone": ("st",), "stones": ("st",), "grams": ("g",), "kilograms": ("kg",),
    "n/mm": ("N/mm",), "n/m": ("N/m",), "n/cm": ("N/cm",), "kg/mm": ("kgf/mm",), "kgf/mm": ("kgf/mm",),
    "lb/in": ("lbf/in",), "lbs/in": ("lbf/in",), "lbf/in": ("lbf/in",), "lb/inch": ("lbf/in",), "lbs/inch": ("lbf/in",),
    "n": ("N",), "kn": ("kN",), "kgf": ("kgf",), "lbf": ("lbf",), "j": ("J",), "n mm": ("N mm",),
    "mm3": ("mm3",), "mm³": ("mm3",), "ml": ("ml",), "cc": ("ml",), "cm3": ("ml",), "cm³": ("ml",),
    "l": ("l",), "litre": ("l",), "litres": ("l",), "liter": ("l",), "liters": ("l",),
    "us fl oz": ("US fl oz",), "imp fl oz": ("imp fl oz",), "uk fl oz": ("imp fl oz",),
    "bar": ("bar",), "psi": ("psi",), "hpa": ("hPa",), "mbar": ("hPa",), "kpa": ("kPa",), "pa": ("Pa",),
    "atm": ("atm",), "gpa": ("GPa",),
    "°": ("°",), "deg": ("°",), "degrees": ("°",), "rad": ("rad",),
    "°c": ("°C",), "° c": ("°C",), "c": ("°C",), "degc": ("°C",), "deg c": ("°C",), "celsius": ("°C",), "degrees c": ("°C",),
    "°f": ("°F",), "° f": ("°F",), "f": ("°F",), "degf": ("°F",), "deg f": ("°F",), "fahrenheit": ("°F",), "degrees f": ("°F",),
    "k": ("K",),
    "%": ("%",), "percent": ("%",), "hz": ("Hz",), "s": ("s",), "h": ("h",),
    "mm2/s": ("mm²/s",), "mm²/s": ("mm²/s",), "cst": ("cSt",), "kg/m3": ("kg/m³",), "kg/m³": ("kg/m³",),
    "g/ml": ("g/ml",), "g/cm3": ("g/ml",), "g/cm³": ("g/ml",), "kg/l": ("g/ml",),
    "m/s": ("m/s",), "mm/s": ("mm/s",), "in/s": ("in/s",),
    "m/s2": ("m/s²",), "m/s²": ("m/s²",), "gn": ("G",), "g0": ("G",),
}  # fmt: skip

# Spellings that mean two units of one dimension; the reader offers both.
AMBIGUOUS: Mapping[str, Mapping[str, tuple[str, ...]]] = {
    "volume": {"oz": ("US fl oz", "imp fl oz"), "fl oz": ("US fl oz", "imp fl oz"), "floz": ("US fl oz", "imp fl oz")},
    "temperature": {"°": ("°C", "°F"), "deg": ("°C", "°F"), "degrees": ("°C", "°F")},
}

# Exact definitions (NIST SP 811): in, lb, stone, kgf, lbf, psi, bar, atm, fluid ounces follow from them.
DEFINITIONS = (
    "metre = [length]",
    "kilogram = [mass]",
    "second = [time]",
    "kelvin = [temperature]; offset: 0",
    "radian = []",
    "percent = 0.01 = pct",
    "degree = 3.141592653589793 / 180 * radian",
    "degree_celsius = kelvin; offset: 273.15",
    "degree_fahrenheit = 5 / 9 * kelvin; offset: 233.15 + 200 / 9",
    "millimetre = 0.001 * metre",
    "centimetre = 0.01 * metre",
    "kilometre = 1000 * metre",
    "inch = 0.0254 * metre",
    "foot = 0.3048 * metre",
    "gram = 0.001 * kilogram",
    "pound = 0.45359237 * kilogram",
    "stone = 14 * pound",
    "newton = kilogram * metre / second ** 2",
    "kilonewton = 1000 * newton",
    "kilogram_force = 9.80665 * newton",
    "pound_force = 0.45359237 * kilogram_force",
    "joule = newton * metre",
    "pascal = newton / metre ** 2",
    "hectopascal = 100 * pascal",
    "kilopascal = 1000 * pascal",
    "megapascal = 1000000 * pascal",
    "gigapascal = 1000000000 * pascal",
    "bar = 100000 * pascal",
    "psi = pound_force / inch ** 2",
    "atmosphere = 101325 * pascal",
    "millilitre = centimetre ** 3",
    "litre = 1000 * millilitre",
    "us_fluid_ounce = 29.5735295625 * millilitre",
    "imperial_fluid_ounce = 28.4130625 * millilitre",
    "centistokes = millimetre ** 2 / second",
    "hertz = 1 / second",
    "hour = 3600 * second",
    "standard_gravity = 9.80665 * metre / second ** 2",
)
