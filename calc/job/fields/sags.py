"""Sags as a tape finds them, each read twice: results that correct what they hang on, and stand in for nothing."""

from __future__ import annotations

from calc.job.field import Default, Field, Kind, Part
from calc.practice import Axle

_Q = Kind.QUANTITY
_F = Part.FOUND

CORRECTS = (
    Field(
        "bike.sags_of", "Sags found of the bike", _F, Kind.CHOICE, choices={"found": "As it came in", "built": "As built"},
        default=Default(choice="found"), typed="stated", how="Which setup was in when the sags were read.",
    ),
    Field(
        "bike.sags_correct", "Sags found", _F, Kind.CHOICE, choices={"yes": "Correct what was not measured", "no": "Are only compared"},
        default=Default(choice="yes"), typed="stated",
        how="Sags that differ from what is expected say that a reading is off. Corrected, the answer follows; what you typed stays.",
    ),
)  # fmt: skip

_ORDER = {
    "alone": "Bike alone, wheel on level ground, held upright. Push down 3 cm, let it rise by itself, wait 15 s.",
    "alone_again": "The same, but lift 3 cm and let it settle.",
    "aboard": "Rider in full kit, in the usual riding position, helper at the tape. Push down 3 cm, let it rise by itself, wait 15 s.",
    "aboard_again": "The same, but lift 3 cm and let it settle.",
}
_LABELS = {
    "alone": "Free sag, pushed down",
    "alone_again": "Free sag, lifted",
    "aboard": "Rider sag, pushed down",
    "aboard_again": "Rider sag, lifted",
}


def sag_fields(axle: Axle, where: str) -> tuple[Field, ...]:
    """The readings of an end's sags; `where` says from where to where lengths are read."""
    along = "Along the leg" if axle == "front" else "Straight up from the axle"
    sags, lengths = {f"{axle}.sags_read": ("sags",)}, {f"{axle}.sags_read": ("lengths",)}
    read = tuple(
        Field(
            f"{axle}.{key}_sag", label, _F, _Q, "length", "mm", 0, 400, 1, 0, plus_minus=2, end=axle, when=sags, result=True,
            how=f"{_ORDER[key]} {along}, from hanging.",
        )
        for key, label in _LABELS.items()
    )  # fmt: skip
    taped = tuple(
        Field(
            f"{axle}.{key}_length", label.replace("sag", "sag length"), _F, _Q, "length", "mm", 50, 1500, 1, 0, plus_minus=2, end=axle,
            when=lengths, result=True, how=f"{_ORDER[key]} {where}.",
        )
        for key, label in _LABELS.items()
    )  # fmt: skip
    return (
        Field(
            f"{axle}.sags_read", f"{'Fork' if axle == 'front' else 'Rear'} sags read as", _F, Kind.CHOICE, choices={"sags": "Sags, from hanging", "lengths": "Lengths, by tape"},
            end=axle, default=Default(choice="sags"), how="An o-ring shows the sag itself; a tape shows lengths.", typed="stated",
        ),
        *read,
        Field(
            f"{axle}.hanging_length", "Hanging length", _F, _Q, "length", "mm", 50, 1500, 1, 0, plus_minus=2, end=axle, when=lengths,
            how=f"Wheel off the ground. {where}.",
        ),
        *taped,
    )  # fmt: skip
