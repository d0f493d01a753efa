"""What a fork holds besides its open air space: a sealed cartridge and its state, or an air spring."""

from __future__ import annotations

from collections.abc import Mapping

from calc.job.field import Default, Field, Kind, Part
from calc.practice import USES

_Q = Kind.QUANTITY
_O = Part.OIL
_HABIT = "a bench's habit, from memory; no source"

# Sizes of an air spring nobody measured: piston [mm], main and balance chamber [ml], and the rod [mm] through that one. Invented,
# and chosen together so that 10 bar on the usual bike give the standard rider the usual sag, ride frequency and force at full
# travel, as near as a small piston comes to them; tests/unit/model/test_air_assumed.py holds them to that.
_AIR_SIZES: Mapping[str, tuple[float, float, float, float]] = {
    "motocross": (36.5, 520.0, 110.0, 14.0),
    "enduro": (34.5, 455.0, 90.0, 14.0),
    "dual-sport": (35.5, 420.0, 65.0, 14.0),
    "adventure": (37.5, 395.0, 25.0, 14.0),
    "two-up": (39.0, 430.0, 25.0, 14.0),
    "road": (37.0, 270.0, 14.0, 14.0),
    "supermoto": (37.0, 490.0, 95.0, 14.0),
    "track": (37.0, 250.0, 14.0, 14.0),
    "trials": (26.5, 150.0, 22.0, 14.0),
    "youth": (27.5, 220.0, 45.0, 10.0),
}


def _air_size(index: int, off: float, relative: float = 0.0) -> Default:
    """One of the sizes by the kind of riding, with its 95 % half-width."""
    sizes = {use: (found[index], off + relative * found[index]) for use, found in _AIR_SIZES.items()}
    return Default(follow="bike.use", by_choice=sizes, reason=_HABIT)


# A sealed cartridge's outside [mm]: what the usual tube of each kind of riding has room for beside its spring.
_BODIES = dict.fromkeys(("motocross", "enduro", "supermoto"), (32.0, 4.0)) | dict.fromkeys(
    ("dual-sport", "adventure", "two-up"), (29.0, 4.0)
)
_BODIES |= {"road": (27.0, 4.0), "track": (27.0, 4.0), "trials": (21.0, 3.0), "youth": (18.0, 3.0)}
# A spring-loaded piston's spring [N/mm]: softer behind the small pistons of small legs, as its oil moves it further.
_PISTON_SPRINGS = dict.fromkeys(USES, (2.0, 1.0)) | {"trials": (0.6, 0.3), "youth": (0.2, 0.1)}
# Oil that was poured in met the rod already, and nothing else of an open leg rests on it.
_ROD_POURED = {"front.air": ("open", "air leg"), "front.area_by": ("raised", "brim")}
_SEALED = {"front.air": ("sealed cartridge",)}
_GAS = _SEALED | {"front.cartridge_fill": ("gas",)}
_SPRING = _SEALED | {"front.cartridge_fill": ("spring",)}
_GAUGE = _SEALED | {"front.charge_by": ("gauge",)}
_SCALE = _SEALED | {"front.charge_by": ("scale",)}
_LEAKING = _SEALED | {"front.cartridge_state": ("seal leaking",)}
_MOVED = _SEALED | {"front.cartridge_state": ("oil moved",)}
_AIR = {"front.air": ("air leg",)}
_BALANCE = _AIR | {"front.balance": ("yes",)}
_PORT = _BALANCE | {"front.balance_fill": ("port",)}
_VALVE = _BALANCE | {"front.balance_fill": ("valve",)}
_SECOND = _AIR | {"front.second": ("yes",)}

KINDS = {"open": "Open damper", "sealed cartridge": "Sealed cartridge", "air leg": "Air spring"}
STATES = {"as built": "As built", "seal leaking": "Seal leaking", "oil moved": "Oil moved", "opened into one": "Opened to the leg"}
END_BY = {"gap": "Oil height, both legs", "oil": "Oil or spacers in the main chamber", "second": "Pressure of the second volume"}

AIR = (
    Field(
        "front.air", "Kind of fork", _O, Kind.CHOICE, choices=KINDS, default=Default(choice="open"), end="front", typed="stated",
        how="Open: the damper shares the oil and air of the leg. A sealed cartridge has its own oil, under gas or a spring-loaded piston. An air spring is pumped up and carries the bike.",
    ),
    Field(
        "front.cartridge_state", "Cartridge condition", _O, Kind.CHOICE, choices=STATES, default=Default(choice="as built"), when=_SEALED,
        end="front", main=True, typed="stated",
        how="Opened to the leg: vented in the workshop, so the charge is gone and the gap is read as in an open leg. The setup as sold still counts as built.",
    ),
    Field(
        "front.cartridge_fill", "Cartridge pressurised by", _O, Kind.CHOICE, choices={"gas": "Gas", "spring": "A spring-loaded piston"},
        default=Default(choice="spring"), when=_SEALED, end="front", typed="stated", how="From the maker's drawing, or by what is under the cap.",
    ),
    Field(
        "front.damper_rod", "Damper rod diameter", _O, _Q, "length", "mm", 0, 25, 0.5, 1, plus_minus=0.05, usual="damper rod",
        default=Default("damper rod"), idle=_ROD_POURED, end="front",
        how="By vernier. It stands in the free area between the tube's edge and the oil; 0 where no rod does.",
    ),
    Field(
        "front.cartridge_body", "Cartridge outside diameter", _O, _Q, "length", "mm", 15, 60, 0.5, 1, plus_minus=0.1,
        default=Default(follow="bike.use", by_choice=_BODIES, reason=_HABIT), when=_SEALED, end="front",
        how="By vernier, at the height of the oil around it. A free area found by pouring is used as you found it, opened or not.",
    ),
    Field(
        "front.charge_by", "Charge known from", _O, Kind.CHOICE, choices={"gauge": "A pressure", "scale": "Rod end on scales"},
        default=Default(choice="gauge"), when=_SEALED, end="front", typed="stated",
        how="Cartridge out of the leg, rod fully out: press the rod end slowly onto kitchen scales. The force that starts it moving, divided by the area of the rod, is the charge.",
    ),
    Field(
        "front.cartridge_charge", "Cartridge charge", _O, _Q, "pressure", "bar", 0, 25, 0.5, 1, plus_minus=0.3, main=True,
        default=Default(follow="front.cartridge_fill", by_choice={"gas": (3.0, 2.0), "spring": (1.5, 1.0)}), when=_GAUGE, end="front",
        how="Gauge pressure with the rod fully out, where it was filled. With a spring-loaded piston: spring force divided by piston area.", typed="stated",
    ),
    Field(
        "front.charge_force", "Force on the rod end", _O, _Q, "force", "N", 0, 600, 1, 0, plus_minus=2, main=True, when=_SCALE,
        end="front", how="The average of just moving in and just coming out; 1 kg on the scales is 9.8 N.",
    ),
    Field(
        "front.cartridge_gas", "Cartridge gas volume", _O, _Q, "volume", "ml", 5, 400, 5, 0, plus_minus=5,
        default=Default(value=90.0, plus_minus=35.0, reason=_HABIT), when=_GAS, end="front", how="With the rod fully out.", typed="stated",
    ),
    Field(
        "front.cartridge_piston", "Spring-loaded piston, diameter", _O, _Q, "length", "mm", 12, 60, 0.5, 1, plus_minus=0.05, usual="fork piston",
        default=Default(value=-4.0, plus_minus=2.0, follow="front.cartridge_body", reason=_HABIT), when=_SPRING, end="front", how="By vernier.",
    ),
    Field(
        "front.piston_spring", "Spring behind the piston", _O, _Q, "spring rate", "N/mm", 0, 60, 0.1, 1, plus_minus_relative=0.05,
        default=Default(follow="bike.use", by_choice=_PISTON_SPRINGS, reason=_HABIT), when=_SPRING, end="front", how="On a spring tester.", typed="stated",
    ),
    Field(
        "front.piston_back", "Behind the piston is", _O, Kind.CHOICE, choices={"outer": "The air of the leg", "vented": "Outside air"},
        default=Default(choice="outer"), when=_SPRING, end="front", typed="stated",
        how="If it is the air of the leg, the whole seal area works on the leg's own gas.",
    ),
    Field(
        "front.piston_stop", "Piston travel to its stop", _O, _Q, "length", "mm", 2, 200, 1, 0, plus_minus=1, when=_SPRING,
        end="front", how="From where it stands with the rod out. Leave empty to skip the check.",
    ),
    Field(
        "front.piston_bleed", "Piston travel to its bleed holes", _O, _Q, "length", "mm", 1, 200, 1, 0, plus_minus=1,
        when=_SPRING | {"front.piston_back": ("outer",)}, end="front", how="From where it stands with the rod out. Leave empty if there are none.",
    ),
    Field(
        "front.leak", "Size of the leak", _O, Kind.CHOICE, choices={"wide": "Wide open", "small": "Small: evens out in time, closed to quick moves"},
        default=Default(choice="wide"), when=_LEAKING, end="front", typed="stated",
        how="Small: the charge is gone overnight, yet the damper still works.",
    ),
    Field(
        "front.leak_bled", "Bled since it started leaking", _O, Kind.CHOICE, choices={"no": "No", "yes": "Yes"}, default=Default(choice="no"),
        when=_LEAKING | {"front.cartridge_fill": ("gas",)}, end="front", typed="stated",
        how="Not bled, the cartridge's gas is still in the leg. Bled, the charge is gone.",
    ),
    Field(
        "front.joined_stroke", "Leaks from a stroke of", _O, _Q, "length", "mm", 0, 400, 5, 0, plus_minus=5, end="front",
        when=_LEAKING | {"front.cartridge_fill": ("gas",), "front.leak": ("wide",)}, default=Default(value=0.0, reason="all along"),
        how="0: over the whole stroke. Some seals only leak where the tube or rod is worn.",
    ),
    Field(
        "front.piston_front", "Piston can move forward by", _O, _Q, "length", "mm", 0, 200, 1, 0, plus_minus=1, end="front",
        when=_LEAKING | _SPRING, default=Default(value=0.0, reason="it stands at its front stop with the rod out"),
        how="From where it stands with the rod out and the cartridge full, to its front stop: that much oil leaves the cartridge.",
    ),
    Field(
        "front.oil_moved", "Oil that left the cartridge", _O, _Q, "volume", "ml", -100, 150, 1, 0, plus_minus=5, main=True, when=_MOVED,
        end="front", how="The extra oil found around the cartridge. Below 0: oil went in.",
    ),
    Field(
        "front.bled_since", "Bled since", _O, Kind.CHOICE, choices={"yes": "Yes", "no": "No"}, default=Default(choice="yes"), when=_MOVED,
        end="front", typed="stated", how="Whether the bleed screws were opened after the oil had moved.",
    ),
    Field(
        "front.cartridge_oil", "Oil in the cartridge", _O, _Q, "volume", "ml", 20, 600, 10, 0, plus_minus=10, when=_SEALED,
        default=Default(value=200.0, plus_minus=60.0, reason=_HABIT), needs=("place.ridden_temperature", "conditions.hot_temperature", "front.oil_volume"), end="front", how="It expands as it warms.",
    ),
    Field(
        "front.air_in", "Air spring in", _O, Kind.CHOICE, choices={"left": "The left leg", "both": "Both legs"}, when=_AIR,
        default=Default(choice="left"), end="front", typed="stated", how="The other leg then holds the damper, and its own air.",
    ),
    Field(
        "front.air_coil", "Coil spring as well", _O, Kind.CHOICE, choices={"none": "None", "yes": "Yes, as entered under springs"}, when=_AIR,
        default=Default(choice="none"), end="front", typed="stated", how="Some have a small coil too: enter it as the springs fitted.",
    ),
    Field(
        "front.air_pressure", "Air pressure", _O, _Q, "pressure", "bar", 0.5, 20, 0.1, 1, plus_minus=0.2, main=True, when=_AIR,
        usual="air fork, small piston", default=Default("air fork, small piston"), end="front",
        how="Gauge pressure, cold, wheel off the ground, as the pump shows it.",
    ),
    Field(
        "front.pump_loss", "Lost when the pump comes off", _O, _Q, "pressure", "bar", 0, 2, 0.05, 2, plus_minus=0.1, when=_AIR,
        default=Default(value=0.1, plus_minus=0.1, reason=_HABIT), end="front", how="Screw the pump back on: how much less it shows, since its hose fills again.",
    ),
    Field(
        "front.air_piston", "Air piston diameter", _O, _Q, "length", "mm", 10, 60, 0.5, 1, plus_minus=0.05, when=_AIR,
        default=_air_size(0, 2.0), end="front", how="By vernier; it is not the seal diameter.",
    ),
    Field(
        "front.air_volume", "Main chamber volume", _O, _Q, "volume", "ml", 20, 1500, 5, 0, plus_minus=5, when=_AIR,
        default=_air_size(1, 0.0, 0.15), end="front", how="At full extension: with the piston out, fill it with oil from a syringe.",
    ),
    Field(
        "front.balance", "Balance chamber", _O, Kind.CHOICE, choices={"yes": "Yes", "no": "No"}, default=Default(choice="yes"), when=_AIR,
        end="front", typed="stated", how="It pulls the leg in near full extension.",
    ),
    Field(
        "front.balance_fill", "Balance chamber fills", _O, Kind.CHOICE, choices={"port": "Through a port in the stroke", "valve": "Through its own valve"},
        default=Default(choice="port"), when=_BALANCE, end="front", typed="stated", how="Look for a second valve, often at the foot of the leg.",
    ),
    Field(
        "front.balance_volume", "Balance chamber volume", _O, _Q, "volume", "ml", 1, 400, 1, 0, plus_minus=2, when=_BALANCE,
        default=_air_size(2, 0.0, 0.5), end="front", how="At full extension.",
    ),
    Field(
        "front.balance_rod", "Rod through the balance chamber", _O, _Q, "length", "mm", 5, 40, 0.5, 1, plus_minus=0.05, when=_BALANCE,
        default=_air_size(3, 2.0), end="front", how="Its diameter, by vernier. The area of the chamber is the piston's minus this rod's.",
    ),
    Field(
        "front.balance_port", "Port at a stroke of", _O, _Q, "length", "mm", 0, 60, 1, 0, plus_minus=1, when=_PORT,
        default=Default(value=6.0, plus_minus=4.0, reason=_HABIT), end="front", how="Where the two chambers are open to each other.",
    ),
    Field(
        "front.balance_pressure", "Balance chamber pressure", _O, _Q, "pressure", "bar", 0.5, 25, 0.1, 1, plus_minus=0.3, main=True, when=_VALVE,
        default=Default(follow="front.air_pressure", value=0.0, plus_minus=1.5, reason=_HABIT), end="front",
        how="Gauge pressure, cold, leg held fully out, pumped after the main chamber. It stays as found; more of it gives more free sag.",
    ),
    Field(
        "front.second", "Second volume", _O, Kind.CHOICE, choices={"no": "No", "yes": "Yes"}, default=Default(choice="no"), when=_AIR,
        end="front", typed="stated", how="A chamber with its own pressure that opens deep in the stroke.",
    ),
    Field(
        "front.second_volume", "Second volume, size", _O, _Q, "volume", "ml", 5, 600, 5, 0, plus_minus=3, when=_SECOND,
        default=Default(value=60.0, plus_minus=30.0, reason=_HABIT), end="front", how="With its piston at its stop.",
    ),
    Field(
        "front.second_pressure", "Second volume, pressure", _O, _Q, "pressure", "bar", 1, 30, 0.1, 1, plus_minus=0.3, when=_SECOND,
        default=Default(follow="front.air_pressure", value=6.0, plus_minus=3.0, reason=_HABIT), end="front", how="Gauge pressure, cold, as the pump shows it. It opens when the main chamber reaches this.",
    ),
    Field(
        "front.air_end", "Force at full travel set by", _O, Kind.CHOICE, choices=END_BY, default=Default(choice="gap"), when=_AIR, end="front",
        typed="stated", how="The pressure sets the sag. Oil height is set in both legs; a chamber takes oil or spacers where the maker allows it.",
    ),
    Field(
        "front.air_filled", "Oil or spacers in the chamber", _O, _Q, "volume", "ml", 0, 400, 1, 0, when=_AIR | {"front.air_end": ("oil",)}, end="front",
        default=Default(value=0.0, reason="none that could come out; common practice, no source"), typed="stated", decision=True,
        how="How much could come out of the main chamber. Its volume above is as found, with this in.",
    ),
    Field(
        "front.air_step", "Gauge reads in steps of", _O, _Q, "pressure", "bar", 0.01, 1, 0.05, 2, when=_AIR, end="front", typed="stated",
        default=Default(value=0.1, reason=_HABIT), decision=True, how="Pressures are given in whole steps of this.",
    ),
    Field(
        "front.air_most", "Maximum pressure", _O, _Q, "pressure", "bar", 1, 30, 0.5, 1, when=_AIR, end="front", typed="stated", decision=True,
        how="From the maker's manual. Leave empty to skip the check.",
    ),
    Field(
        "front.tried_pressure", "Try pressure", _O, _Q, "pressure", "bar", 0.5, 25, 0.1, 1, when=_AIR, end="front", typed="stated", decision=True,
        how="A pressure to compare with the answer. Leave empty to keep the answer's.",
    ),
    Field(
        "standard.air_pressure", "Air pressure as sold", _O, _Q, "pressure", "bar", 0.5, 20, 0.1, 1, plus_minus=0.2, when=_AIR,
        default=Default(follow="front.air_pressure"), end="front", how="From the manual, for the rider that the bike is set up for.", typed="stated",
    ),
)  # fmt: skip
