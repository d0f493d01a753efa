"""What the sheet of an oil's tin states. No answer rests on it: damping is left out of every model."""

from __future__ import annotations

from calc.job.field import Field, Kind, Part

_Q = Kind.QUANTITY
_S = Part.SHEET
_NU = "kinematic viscosity"
_FIRST = ("oil.viscosity_40", "oil.viscosity_100")
_SECOND = ("oil.second_40", "oil.second_100")

OIL_SHEET = (
    Field(
        "oil.viscosity_40", "Viscosity at 40 °C", _S, _Q, _NU, "mm²/s", 1, 1000, 1, 1, end="neither", typed="stated", decision=True,
        how="From the maker's data sheet of this very tin: kinematic viscosity at 40 °C. cSt is the same as mm²/s. Not the weight on the label.",
    ),
    Field(
        "oil.viscosity_100", "Viscosity at 100 °C", _S, _Q, _NU, "mm²/s", 0.5, 200, 0.1, 2, end="neither", typed="stated", decision=True,
        how="From the same sheet. The two together say how it thins as it warms.",
    ),
    Field(
        "oil.second_40", "Second oil at 40 °C", _S, _Q, _NU, "mm²/s", 1, 1000, 1, 1, end="neither", typed="stated", decision=True, needs=_FIRST,
        how="Where two oils are mixed: the other one's sheet. Mix only oils whose makers allow it.",
    ),
    Field(
        "oil.second_100", "Second oil at 100 °C", _S, _Q, _NU, "mm²/s", 0.5, 200, 0.1, 2, end="neither", typed="stated", decision=True, needs=_FIRST,
        how="From the second oil's sheet.",
    ),
    Field(
        "oil.second_share", "Second oil, part of the mix", _S, _Q, "share", "%", 0, 100, 5, 0, end="neither", typed="stated", decision=True, needs=_SECOND,
        how="By volume, of the whole: 30 % is 300 ml of it in a litre.",
    ),
    Field(
        "oil.density", "Density at 15 °C", _S, _Q, "density", "kg/m³", 800, 1160, 5, 0, end="neither", typed="stated", decision=True,
        how="From the sheet. Of a mix: by their parts.",
    ),
)  # fmt: skip
