"""Spring steel and spring ends, as data."""

from __future__ import annotations

from dataclasses import dataclass

STEEL_DENSITY = 7.85e-6  # kg/mm3, +/-1 %, usual for spring steel, handbook value from memory


@dataclass(frozen=True)
class Grade:
    """A spring steel: its label, shear modulus [MPa] and 95 % half-width [MPa]."""

    label: str
    shear_modulus: float
    plus_minus_95: float


# +/- covers the disagreement of the sources (3 % on chrome-silicon); the listed grades span 7 %.
GRADES: dict[str, Grade] = {
    "patented": Grade("Patented cold drawn, EN 10270-1", 81500.0, 1600.0),  # EN 10270-1
    "oil-tempered": Grade("Oil-tempered, EN 10270-2", 79500.0, 2000.0),  # EN 10270-2, from memory
    "chrome-silicon": Grade("Chrome-silicon", 77200.0, 2300.0),  # Shigley, 10th ed., Table 10-5; EN 10270-2 has 79 500
    "music": Grade("Music wire", 81350.0, 1350.0),  # Shigley, 10th ed., Table 10-5: 80.0-82.7 GPa by diameter
}

# Dead coils and solid length in wires beyond the coils, by end type: Machinery's Handbook, 31st ed., p. 309, Table 3.
END_TYPES: dict[str, tuple[float, float]] = {
    "plain": (0.0, 1.0),
    "plain, ground": (1.0, 0.0),
    "squared": (2.0, 1.0),
    "squared, ground": (2.0, 0.0),
}
