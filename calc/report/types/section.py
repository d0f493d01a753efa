"""The fork in section, along its stroke. Depths are in mm under the rim, diameters in mm."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class LegPart:
    """A part from top to bottom as it stands hanging; one that `moves` stands higher by the stroke. `assumed`: what of it no
    reading tells.
    """

    name: str
    top: float
    bottom: float
    outside: float
    inside: float = 0.0
    moves: bool = False
    assumed: tuple[str, ...] = ()


@dataclass(frozen=True, slots=True)
class LegSpace:
    """A gas space along the stroke: where it is, how much [ml], at what pressure [bar, gauge]. Over the oil, its bottom is the
    oil's level. Oil under a spring-loaded piston has no volume of gas, and its top is the piston.
    """

    name: str
    top: tuple[float, ...]
    bottom: tuple[float, ...]
    volume: tuple[float, ...] | None
    pressure: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class LegSpring:
    """A spring along the stroke: where it is; its wire, mean diameter and coils; what of it is assumed."""

    name: str
    top: tuple[float, ...]
    bottom: tuple[float, ...]
    wire: float
    mean: float
    coils: float
    assumed: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class LegEvent:
    """What happens from a stroke [mm] on, or would beyond full travel; `bad`: it must not happen in use."""

    kind: str
    stroke: float
    words: str
    bad: bool = False


@dataclass(frozen=True, slots=True)
class DrawnLeg:
    """One leg: its gap [mm], its parts, gas spaces (over the oil first), springs; force along the leg [N] of both."""

    side: str
    gap: float
    parts: tuple[LegPart, ...]
    spaces: tuple[LegSpace, ...]
    springs: tuple[LegSpring, ...]
    spring_force: tuple[float, ...]
    gas_force: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class Section:
    """The fork in section, at the curve's strokes [mm]; a leg that locks before full travel only up to there. One leg where both
    are alike. `gap_words` say how the gap is read, `process` what the pressures hold for.
    """

    kind: str
    layout: str
    travel: float
    stroke: tuple[float, ...]
    gap_words: str
    process: str
    legs: tuple[DrawnLeg, ...]
    events: tuple[LegEvent, ...]
