"""Front oil and air: the gap by its whole convention, and what goes into the leg afterwards."""

from __future__ import annotations

from calc.job.field import Default, Field, Kind, Part

_Q = Kind.QUANTITY
_O = Part.OIL
_GAP = (
    "Bled until smooth, rod down, spring and spacer out, tubes collapsed, leg upright, five minutes' wait: from the top edge "
    "of the inner tube (conventional) or of the outer tube (upside-down) to the oil."
)
_TRADE = "collapsed, spring and spacer out, told in your own convention; common practice, no source"
_UPSIDE_DOWN = {"front.layout": ("upside-down",)}
_DIAMETERS = {"front.area_by": ("diameters",)}
_BY_VOLUME = {"front.gap_from": ("volume filled",)}
_CONVENTIONAL = dict.fromkeys(("dual-sport", "adventure", "two-up", "trials"), "conventional")

OIL = (
    Field(
        "front.gap_left", "Gap found, left", _O, _Q, "length", "mm", 20, 500, 5, 0, plus_minus=2, main=True, usual="gap",
        default=Default("gap", reason=_TRADE), end="front", how=_GAP, pair="Enter the left leg here and the right leg beside it.",
    ),
    Field(
        "front.gap_right", "Gap found, right", _O, _Q, "length", "mm", 20, 500, 5, 0, plus_minus=2, main=True, usual="gap",
        default=Default(follow="front.gap_left"), end="front", how=_GAP,
    ),
    Field(
        "front.gap_read", "Gap is read with", _O, Kind.CHOICE, choices={"out": "Spring and spacer out", "in": "Spring and spacer in"},
        default=Default(choice="out"), end="front", how="Most manuals: spring out. Some read it with the spring in.", typed="stated",
    ),
    Field(
        "front.gap_state", "Gap is read with the leg", _O, Kind.CHOICE, choices={"collapsed": "Collapsed", "extended": "Extended"},
        default=Default(choice="collapsed"), end="front", how="Nearly always collapsed.", typed="stated",
    ),
    Field(
        "front.gap_from", "Oil known from", _O, Kind.CHOICE, choices={"read": "The gap, read", "volume filled": "The volume filled"},
        default=Default(choice="read"), end="front", typed="stated",
        how="A volume is reliable only in a dry leg: drained legs keep 10-25 ml, cartridges 30-60 ml; common practice, no source.",
    ),
    Field(
        "front.filled_left", "Oil filled, left", _O, _Q, "volume", "ml", 50, 1500, 5, 0, plus_minus=3, main=True, when=_BY_VOLUME,
        end="front", how="What went in, by measuring jug. With a sealed cartridge: around it.",
    ),
    Field(
        "front.filled_right", "Oil filled, right", _O, _Q, "volume", "ml", 50, 1500, 5, 0, plus_minus=3, main=True, when=_BY_VOLUME,
        default=Default(follow="front.filled_left"), end="front", how="What went in, by measuring jug. With a sealed cartridge: around it.",
    ),
    Field(
        "front.filled_kept", "Old oil that stayed in", _O, _Q, "volume", "ml", 0, 150, 1, 0, plus_minus=5, when=_BY_VOLUME, end="front",
        default=Default(value=17.5, plus_minus=7.5, reason="what a drained leg keeps; common practice, no source"),
        how="0 in a leg that was taken apart and dry; a drained leg keeps 10-25 ml, one with its open cartridge in 30-60 ml.",
    ),
    Field(
        "front.brim_volume", "Fills the collapsed leg to the brim", _O, _Q, "volume", "ml", 100, 2000, 5, 0, plus_minus=5, main=True,
        when=_BY_VOLUME, end="front",
        how="From dry, spring and spacer out, leg collapsed. Without it the gap is not known and only changes hold: 10 ml more oil is 10 ml less gas.",
    ),
    Field(
        "front.layout", "Fork", _O, Kind.CHOICE, choices={"upside-down": "Upside-down", "conventional": "Conventional"},
        default=Default(choice="upside-down", choice_by_use=_CONVENTIONAL), end="front", how="Upside-down: the chrome tube is at the bottom.", typed="stated",
    ),
    Field(
        "front.seal_diameter", "Seal diameter", _O, _Q, "length", "mm", 20, 70, 1, 1, plus_minus=0.1, main=True, usual="stanchion",
        default=Default("stanchion"), end="front", how="Outside of the chrome tube, by vernier.",
    ),
    Field(
        "front.collapsed_stroke", "Stroke to fully collapsed", _O, _Q, "length", "mm", 20, 420, 1, 0, plus_minus=1, main=True,
        usual="collapsed over travel", default=Default("collapsed over travel", follow="front.travel"), end="front",
        how="Exposed chrome hanging, cap on, less exposed chrome collapsed, cap off, spring out.",
    ),
    Field(
        "front.area_by", "Free area known from", _O, Kind.CHOICE, choices={"raised": "Oil poured in", "brim": "Filled to the brim", "diameters": "Diameters"},
        default=Default(choice="diameters"), end="front", how="Pouring a known volume and reading the rise is best.", typed="stated",
    ),
    Field(
        "front.raised_volume", "Oil poured in", _O, _Q, "volume", "ml", 5, 200, 5, 0, plus_minus=0, when={"front.area_by": ("raised",)},
        default=Default(value=20.0, reason="the usual pour"), end="front", how="By syringe; its error is counted in the rise's +/-.",
    ),
    Field(
        "front.raised_height", "It raised the oil by", _O, _Q, "length", "mm", 2, 150, 0.5, 1, plus_minus=0.4, main=True,
        when={"front.area_by": ("raised",)}, end="front",
        how="Read the gap, pour, read it again. It holds for the depth that the oil covered.",
    ),
    Field(
        "front.brim_gap", "Filled to the brim from a gap of", _O, _Q, "length", "mm", 20, 350, 5, 0, plus_minus=2, main=True,
        when={"front.area_by": ("brim",)}, end="front", how="Collapsed, spring and spacer out: read the gap before you pour.",
    ),
    Field(
        "front.brim_poured", "It took", _O, _Q, "volume", "ml", 20, 1000, 5, 0, plus_minus=2, main=True,
        when={"front.area_by": ("brim",)}, end="front", how="By syringe or jug, until the oil stands level with the tube's edge.",
    ),
    Field(
        "front.wall", "Chrome tube's wall", _O, _Q, "length", "mm", 1, 6, 0.1, 1, plus_minus=0.1, usual="stanchion wall",
        default=Default("stanchion wall"), when=_DIAMETERS, end="front", how="By vernier at the open end.",
    ),
    Field(
        "front.outer_bore", "Outer tube's bore", _O, _Q, "length", "mm", 20, 80, 0.1, 1, plus_minus=0.1, when=_UPSIDE_DOWN,
        default=Default("outer bore over stanchion", follow="front.seal_diameter"), end="front",
        how="Inside of the outer tube at the top, above the chrome tube's end when collapsed.",
    ),
    Field(
        "front.outer_depth", "Depth of the outer bore alone", _O, _Q, "length", "mm", 0, 150, 1, 0, plus_minus=2, when=_UPSIDE_DOWN,
        usual="outer bore depth", default=Default("outer bore depth"), end="front",
        how="Collapsed: from the outer tube's top edge down to the chrome tube's end.",
    ),
    Field(
        "front.spring_steel", "Spring's steel, fitted spring", _O, _Q, "volume", "ml", 5, 150, 1, 0, plus_minus=0.5,
        usual="spring steel", default=Default("spring steel"), end="front", unless=(("front.spring_mass",),),
        how="By the water it displaces in a jug. Other rates are taken as this times the root of the rate ratio.",
    ),
    Field(
        "front.spring_mass", "Spring on a kitchen scale", _O, _Q, "mass", "g", 40, 1200, 1, 0, plus_minus=4, end="front",
        how="One fitted spring, dry. Its steel in millilitres is grams / 7.85. Other rates: times the root of the rate ratio.",
    ),
    Field(
        "front.spacer_volume", "Spacer", _O, _Q, "volume", "ml", 0, 200, 1, 0, plus_minus=1, end="front",
        default=Default(value=0.0, reason="no spacer named"), how="Its wall only if open, all of it if closed at both ends.",
    ),
    Field(
        "front.spacer_length", "Spacer's length", _O, _Q, "length", "mm", 0, 300, 1, 0, plus_minus=1, end="front",
        when={"front.gap_read": ("in",)}, default=Default(value=0.0, reason="no spacer named"), how="Down from the tube's edge.",
    ),
    Field(
        "front.washers_volume", "Washers and seats", _O, _Q, "volume", "ml", 0, 60, 1, 0, plus_minus=1, end="front",
        default=Default(value=0.0, reason="none named"), how="Everything small that goes in after the gap is read.",
    ),
    Field(
        "front.cap_volume", "Cap in the tube", _O, _Q, "volume", "ml", -60, 100, 1, 0, plus_minus=3, usual="cap in tube",
        default=Default("cap in tube"), end="front", how="In a jug of water up to its flange. A hollow cap that adds space is negative.",
    ),
    Field(
        "front.rod_volume", "Rod above the rim", _O, _Q, "volume", "ml", 0, 60, 1, 0, plus_minus=1, end="front",
        default=Default(value=0.0, reason="rod down, nothing above the rim"), how="Only what stood above the tube's edge when the gap was read.",
    ),
    Field(
        "front.oil_volume", "Oil in the leg", _O, _Q, "volume", "ml", 50, 1500, 10, 0, plus_minus=10,
        default=Default(follow="front.air", by_choice={"open": (550.0, 200.0), "sealed cartridge": (340.0, 55.0), "air leg": (300.0, 150.0)}), end="front",
        how="All of the oil in one leg, or around a sealed cartridge: it grows when it warms. The gap does not tell it.",
    ),
    Field(
        "front.tube_metal", "Outer tube", _O, Kind.CHOICE, choices={"aluminium": "Aluminium", "steel": "Steel"},
        default=Default(choice="aluminium"), needs=("place.ridden_temperature", "elsewhere.hot_temperature", "front.oil_volume"), end="front", typed="stated",
        how="The tube that most of the oil and gas stands in: it grows too. A magnet tells.",
    ),
    Field(
        "front.gap_min", "Smallest gap", _O, _Q, "length", "mm", 10, 450, 5, 0, usual="smallest gap", default=Default("smallest gap", reason=_TRADE),
        end="front", how="By the seals or the maker.", typed="stated", decision=True,
    ),
    Field(
        "front.gap_max", "Largest gap", _O, _Q, "length", "mm", 40, 500, 5, 0, usual="largest gap", default=Default("largest gap", reason=_TRADE),
        end="front", how="The damper must stay covered with the leg extended.", typed="stated", decision=True,
    ),
)  # fmt: skip
