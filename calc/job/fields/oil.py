"""Front oil and air: the gap by its whole convention, and what goes into the leg afterwards."""

from __future__ import annotations

from calc.job.field import Default, Field, Kind, Part

_Q = Kind.QUANTITY
_O = Part.OIL
_GAP = (
    "Damper bled until smooth, rod down, spring and spacer out, leg collapsed and upright, five minutes to settle. From the top "
    "edge of the inner tube (conventional) or of the outer tube (upside-down) down to the oil."
)
_TRADE = "collapsed, spring and spacer out, told in your own convention; common practice, no source"
_UPSIDE_DOWN = {"front.layout": ("upside-down",)}
_DIAMETERS = {"front.area_by": ("diameters",)}
_BY_VOLUME = {"front.gap_from": ("volume filled",)}
_CONVENTIONAL = dict.fromkeys(("dual-sport", "adventure", "two-up", "trials"), "conventional")

OIL = (
    Field(
        "front.gap_left", "Gap as found, left", _O, _Q, "length", "mm", 20, 500, 5, 0, plus_minus=2, main=True, usual="gap",
        default=Default("gap", reason=_TRADE), end="front", how=_GAP, pair="Enter the left leg here and the right leg beside it.",
    ),
    Field(
        "front.gap_right", "Gap as found, right", _O, _Q, "length", "mm", 20, 500, 5, 0, plus_minus=2, main=True, usual="gap",
        default=Default(follow="front.gap_left"), end="front", how=_GAP,
    ),
    Field(
        "front.gap_read", "Gap read with", _O, Kind.CHOICE, choices={"out": "Spring and spacer out", "in": "Spring and spacer in"},
        default=Default(choice="out"), end="front", how="Most manuals: spring out. Some read it with the spring in.", typed="stated",
    ),
    Field(
        "front.gap_state", "Gap read with the leg", _O, Kind.CHOICE, choices={"collapsed": "Collapsed", "extended": "Extended"},
        default=Default(choice="collapsed"), end="front", how="Nearly always collapsed.", typed="stated",
    ),
    Field(
        "front.gap_from", "Oil known from", _O, Kind.CHOICE, choices={"read": "The gap", "volume filled": "The volume filled"},
        default=Default(choice="read"), end="front", typed="stated",
        how="A volume is only reliable in a dry leg: drained legs keep 10-25 ml, cartridges 30-60 ml; common practice, no source.",
    ),
    Field(
        "front.filled_left", "Oil filled, left", _O, _Q, "volume", "ml", 50, 1500, 5, 0, plus_minus=3, main=True, when=_BY_VOLUME,
        end="front", how="What went in, by measuring jug. With a sealed cartridge: the oil around it.",
    ),
    Field(
        "front.filled_right", "Oil filled, right", _O, _Q, "volume", "ml", 50, 1500, 5, 0, plus_minus=3, main=True, when=_BY_VOLUME,
        default=Default(follow="front.filled_left"), end="front", how="What went in, by measuring jug. With a sealed cartridge: the oil around it.",
    ),
    Field(
        "front.filled_kept", "Old oil left in", _O, _Q, "volume", "ml", 0, 150, 1, 0, plus_minus=5, when=_BY_VOLUME, end="front",
        default=Default(value=17.5, plus_minus=7.5, reason="what a drained leg keeps; common practice, no source"),
        how="0 if the leg was stripped and dry; a drained leg keeps 10-25 ml, or 30-60 ml with its open cartridge still in.",
    ),
    Field(
        "front.brim_volume", "Oil to fill the collapsed leg to the brim", _O, _Q, "volume", "ml", 100, 2000, 5, 0, plus_minus=5, main=True,
        when=_BY_VOLUME, end="front",
        how="From dry, spring and spacer out, leg collapsed. Without it the gap is unknown and only changes hold: 10 ml more oil is 10 ml less gas.",
    ),
    Field(
        "front.layout", "Fork legs", _O, Kind.CHOICE, choices={"upside-down": "Upside-down", "conventional": "Conventional"},
        default=Default(choice="upside-down", choice_by_use=_CONVENTIONAL), end="front", how="Upside-down: the chrome tube is at the bottom.", typed="stated",
    ),
    Field(
        "front.seal_diameter", "Seal diameter", _O, _Q, "length", "mm", 20, 70, 1, 1, plus_minus=0.1, main=True, usual="stanchion",
        default=Default("stanchion"), end="front", how="Outside diameter of the chrome tube, by vernier.",
    ),
    Field(
        "front.collapsed_stroke", "Stroke to fully collapsed", _O, _Q, "length", "mm", 20, 420, 1, 0, plus_minus=1, main=True,
        usual="collapsed over travel", default=Default("collapsed over travel", follow="front.travel"), end="front",
        how="Exposed chrome hanging (cap on) minus exposed chrome fully collapsed (cap off, spring out).",
    ),
    Field(
        "front.area_by", "Free area known from", _O, Kind.CHOICE, choices={"raised": "Oil poured in", "brim": "Filled to the brim", "diameters": "Diameters"},
        default=Default(choice="diameters"), end="front", how="The cross-section that the oil stands in. Best: pour in a known volume and read how far the oil rises.", typed="stated",
    ),
    Field(
        "front.raised_volume", "Oil poured in", _O, _Q, "volume", "ml", 5, 200, 5, 0, plus_minus=0, when={"front.area_by": ("raised",)},
        default=Default(value=20.0, reason="the usual pour"), end="front", how="By syringe. Its error is included in the +/- of the rise.",
    ),
    Field(
        "front.raised_height", "The oil rose by", _O, _Q, "length", "mm", 2, 150, 0.5, 1, plus_minus=0.4, main=True,
        when={"front.area_by": ("raised",)}, end="front",
        how="Read the gap, pour, read it again. It only holds for the depth that the oil covered.",
    ),
    Field(
        "front.brim_gap", "Filled to the brim from a gap of", _O, _Q, "length", "mm", 20, 350, 5, 0, plus_minus=2, main=True,
        when={"front.area_by": ("brim",)}, end="front", how="Collapsed, spring and spacer out: read the gap before you pour.",
    ),
    Field(
        "front.brim_poured", "Oil it took", _O, _Q, "volume", "ml", 20, 1000, 5, 0, plus_minus=2, main=True,
        when={"front.area_by": ("brim",)}, end="front", how="By syringe or jug, until the oil is level with the edge of the tube.",
    ),
    Field(
        "front.wall", "Chrome tube wall", _O, _Q, "length", "mm", 1, 6, 0.1, 1, plus_minus=0.1, usual="stanchion wall",
        default=Default("stanchion wall"), when=_DIAMETERS, end="front", how="By vernier at the open end.",
    ),
    Field(
        "front.outer_bore", "Outer tube bore", _O, _Q, "length", "mm", 20, 80, 0.1, 1, plus_minus=0.1, when=_UPSIDE_DOWN,
        default=Default("outer bore over stanchion", follow="front.seal_diameter"), end="front",
        how="Inside diameter of the outer tube at the top, above the end of the chrome tube when collapsed.",
    ),
    Field(
        "front.outer_depth", "Outer bore above the chrome tube", _O, _Q, "length", "mm", 0, 150, 1, 0, plus_minus=2, when=_UPSIDE_DOWN,
        usual="outer bore depth", default=Default("outer bore depth"), end="front",
        how="Leg collapsed: from the top edge of the outer tube down to the end of the chrome tube.",
    ),
    Field(
        "front.spring_steel", "Steel in the fitted spring", _O, _Q, "volume", "ml", 5, 150, 1, 0, plus_minus=0.5,
        usual="spring steel", default=Default("spring steel"), end="front", unless=(("front.spring_mass",),),
        how="By the water it displaces in a measuring jug. For other rates it is scaled by the square root of the rate ratio.",
    ),
    Field(
        "front.spring_mass", "Fitted spring, weighed", _O, _Q, "mass", "g", 40, 1200, 1, 0, plus_minus=4, end="front",
        how="One fitted spring, dry, on kitchen scales. Grams / 7.85 gives millilitres of steel; for other rates it is scaled by the square root of the rate ratio.",
    ),
    Field(
        "front.spacer_volume", "Spacer volume", _O, _Q, "volume", "ml", 0, 200, 1, 0, plus_minus=1, end="front",
        default=Default(value=0.0, reason="no spacer named"), how="Only its wall if it is open, all of it if closed at both ends.",
    ),
    Field(
        "front.spacer_length", "Spacer length", _O, _Q, "length", "mm", 0, 300, 1, 0, plus_minus=1, end="front",
        when={"front.gap_read": ("in",)}, default=Default(value=0.0, reason="no spacer named"), how="How far it reaches down from the edge of the tube.",
    ),
    Field(
        "front.washers_volume", "Washers and seats", _O, _Q, "volume", "ml", 0, 60, 1, 0, plus_minus=1, end="front",
        default=Default(value=0.0, reason="none named"), how="Everything small that goes in after the gap is read.",
    ),
    Field(
        "front.cap_volume", "Cap in the tube", _O, _Q, "volume", "ml", -60, 100, 1, 0, plus_minus=3, usual="cap in tube",
        default=Default("cap in tube"), end="front", how="Sink it in a measuring jug up to its flange. A hollow cap that adds space is negative.",
    ),
    Field(
        "front.rod_volume", "Rod above the rim", _O, _Q, "volume", "ml", 0, 60, 1, 0, plus_minus=1, end="front",
        default=Default(value=0.0, reason="rod down, nothing above the rim"), how="Only what stood above the edge of the tube when the gap was read.",
    ),
    Field(
        "front.oil_volume", "Oil in the leg", _O, _Q, "volume", "ml", 50, 1500, 10, 0, plus_minus=10,
        default=Default(follow="front.air", by_choice={"open": (550.0, 200.0), "sealed cartridge": (340.0, 55.0), "air leg": (300.0, 150.0)}), end="front",
        how="All the oil in one leg, or around a sealed cartridge: it expands as it warms. The gap does not give it.",
    ),
    Field(
        "front.tube_metal", "Outer tube is made of", _O, Kind.CHOICE, choices={"aluminium": "Aluminium", "steel": "Steel"},
        default=Default(choice="aluminium"), needs=("place.ridden_temperature", "conditions.hot_temperature", "front.oil_volume"), end="front", typed="stated",
        how="The tube that holds most of the oil and gas: it expands too. Try a magnet.",
    ),
    Field(
        "front.gap_min", "Minimum gap", _O, _Q, "length", "mm", 10, 450, 5, 0, usual="smallest gap", default=Default("smallest gap", reason=_TRADE),
        end="front", how="As the seals or the maker allow.", typed="stated", decision=True,
    ),
    Field(
        "front.gap_max", "Maximum gap", _O, _Q, "length", "mm", 40, 500, 5, 0, usual="largest gap", default=Default("largest gap", reason=_TRADE),
        end="front", how="The damper must stay covered with the leg extended.", typed="stated", decision=True,
    ),
)  # fmt: skip
