"""Preload from lengths, turns of the collar, and whether another spring will fit: declared once for both ends."""

from __future__ import annotations

from calc.job.field import Default, Field, Kind, Part
from calc.practice import Axle

_Q = Kind.QUANTITY


def preload_fields(axle: Axle, part: Part) -> tuple[Field, ...]:
    """Where the fitted preload is known from, and the thread that sets it."""
    lengths = {f"{axle}.preload_from": ("lengths",)}
    front = axle == "front"
    measured = (
        Field(
            "front.spacers", "Spacers on the spring", part, _Q, "length", "mm", 0, 400, 1, 0, plus_minus=1, main=True, when=lengths, end=axle,
            default=Default(value=0.0, reason="no spacer entered"), how="Length of all spacers, washers and seats in line with the spring, including a second spring stacked on it.",
        ),
        Field(
            "front.space", "Space at full extension", part, _Q, "length", "mm", 60, 900, 1, 0, plus_minus=1, main=True, when=lengths, end=axle,
            how="From the seat in the cap to the lower spring seat: leg hanging on its top-out spring, cap tight, adjuster as ridden.",
        ),
    ) if front else (
        Field(
            "rear.installed_length", "Spring installed length", part, _Q, "length", "mm", 60, 500, 1, 0, plus_minus=1, main=True,
            when=lengths, end=axle, how="Collar to seat, shock off the bike at full extension.",
        ),
    )  # fmt: skip
    return (
        Field(
            f"{axle}.preload_from", "Preload known from", part, Kind.CHOICE, default=Default(choice="read"), end=axle, typed="stated",
            choices={"read": "Measured as preload", "lengths": "Free length and space" if front else "Free and installed length"},
            how="From lengths: free length plus spacers, minus the space." if front else "From lengths: free length minus installed length.",
        ),
        *measured,
        Field(
            f"{axle}.pitch", "Preload per turn of the adjuster" if front else "Preload per turn of the collar", part, _Q, "length", "mm", 0.3, 5, 0.1, 2,
            plus_minus=0.05, end=axle, how="Thread pitch: measure ten threads by vernier and divide by ten. Leave empty to get millimetres only.",
        ),
    )  # fmt: skip


def fit_fields(axle: Axle, part: Part, widths: tuple[float, float], lengths: tuple[float, float]) -> tuple[Field, ...]:
    """Sizes of another spring and of its place, with the limits [mm] of widths and of free lengths."""
    own = {f"{axle}.new_spring": ("own",)}

    def size(key: str, label: str, low: float, high: float, decimals: int, how: str) -> Field:
        return Field(
            f"{axle}.{key}", label, part, _Q, "length", "mm", low, high, 0.1 if decimals else 1, decimals,
            plus_minus=0.1 if decimals else 1.0, when=own, end=axle, how=how, typed="stated",
        )  # fmt: skip

    thread = (
        ()
        if axle == "front"
        else (size("thread_left", "Thread left on the collar", 0, 80, 0, "From the collar, as found, to where it must stop."),)
    )
    return (
        Field(
            f"{axle}.new_spring", "Other springs are", part, Kind.CHOICE, default=Default(choice="same"), end=axle, typed="stated",
            choices={"same": "The same size as the fitted one", "own": "A different size"},
            how="Another make is often longer or wider: enter its sizes to check that it fits.",
        ),
        size("new_free", "New spring free length", *lengths, 0, "From its maker, or on the bench."),
        size("new_solid", "New spring solid length", 20, lengths[1], 0, "All coils touching."),
        size("new_outside", "New spring, outside diameter", *widths, 1, "By vernier. It grows a little as the coils close."),
        size("new_inside", "New spring, inside diameter", *widths, 1, "By vernier."),
        size("spring_bore", "Narrowest diameter around the spring", *widths, 1, "By vernier, inside the tube or whatever surrounds it."),
        size("spring_core", "Widest part inside the spring", *widths, 1, "Diameter of the rod, cartridge, guide or body inside it."),
        *thread,
    )  # fmt: skip
