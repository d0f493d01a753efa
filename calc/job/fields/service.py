"""What the engine's hours (or the road's kilometres) are now, when each end was last serviced, and how often it should be."""

from __future__ import annotations

from calc.job.field import Default, Field, Kind, Part

_S = Part.SERVICE
_BY_ROAD = dict.fromkeys(("dual-sport", "adventure", "two-up", "road"), "km")
_EVERY = "The maker's manual takes precedence. This is the usual interval for the riding."

COUNTED = Field(
    "service.counted", "Service counted in", _S, Kind.CHOICE, choices={"hours": "Engine hours", "km": "Kilometres"}, end="neither", typed="stated",
    default=Default(choice="hours", choice_by_use=_BY_ROAD), how="What the bike has a meter for.",
)  # fmt: skip


def _counted(key: str, dimension: str, unit: str, most: float, step: float, row: str) -> tuple[Field, ...]:
    """The fields of one way of counting."""
    when = {COUNTED.path: (key,)}

    def quantity(name: str, label: str, how: str, least: float = 0.0, **more: object) -> Field:
        return Field(
            f"service.{name}_{key}", label, _S, Kind.QUANTITY, dimension, unit, least, most, step, 0, when=when, end="neither",
            typed="stated", decision=True, how=how, **more,  # type: ignore[arg-type]
        )  # fmt: skip

    last = "What the meter showed when its oil was last changed. Serviced at this visit: what it shows now."
    ends = (("fork", "Fork"), ("shock", "Shock"))
    return (
        quantity("now", "Meter now", "Read it off the bike at this visit.", result=True),
        *(quantity(f"{end}_last", f"{label} last serviced at", last) for end, label in ends),
        *(
            quantity(f"{end}_every", f"{label} service every", _EVERY, 1.0, usual=f"{end} {row}", default=Default(f"{end} {row}"))
            for end, label in ends
        ),
    )


SERVICE = (
    COUNTED,
    *_counted("hours", "time", "h", 50_000.0, 5.0, "service hours"),
    *_counted("km", "length", "km", 999_999.0, 500.0, "service distance"),
)
