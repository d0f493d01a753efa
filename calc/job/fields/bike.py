"""Bike and rider: what the axles carry."""

from __future__ import annotations

from calc.job.field import Default, Field, Kind, Part
from calc.practice import POSTURE, SOLD_LOADED, USES

_BIKE = Part.BIKE
_AXLE = "Bike level, the other wheel on a block as high as the scales; fuel as ridden."
_ABOARD = (
    "Rider in full kit, feet on the pegs, in the riding position named; a helper steadies with a fingertip. Bike level as before."
)
_PASSENGER = {"bike.carries": ("passenger", "both")}
_LUGGAGE = {"bike.carries": ("luggage", "both")}
_BRAKED = ("bike.braking",)

BIKE = (
    Field(
        "bike.use", "Kind of riding", _BIKE, Kind.CHOICE, choices=USES, main=True,
        how="Sets the usual ranges, and whether sag is read sitting or standing.", typed="stated",
    ),
    Field(
        "rider.mass", "Rider in full kit", _BIKE, Kind.QUANTITY, "mass", "kg", 20, 200, 1, 0, plus_minus=1, main=True,
        usual="standard rider", default=Default("standard rider"),
        how="On bathroom scales, wearing everything worn on the ride: boots, helmet, pack, drink.",
    ),
    Field(
        "bike.front_axle", "Front axle, bike alone", _BIKE, Kind.QUANTITY, "mass", "kg", 10, 250, 0.5, 1, plus_minus=0.5,
        main=True, how=_AXLE,
    ),
    Field(
        "bike.rear_axle", "Rear axle, bike alone", _BIKE, Kind.QUANTITY, "mass", "kg", 10, 300, 0.5, 1, plus_minus=0.5,
        main=True, how=_AXLE,
    ),
    Field(
        "rider.posture", "Riding position on the scales", _BIKE, Kind.CHOICE, needs=("rider.front_axle", "rider.rear_axle"), choices={"standing": "Standing", "sitting": "Sitting"},
        default=Default(choice="standing", choice_by_use=POSTURE),
        how="How the rider was on the bike when the axles were weighed.", typed="stated",
    ),
    Field(
        "rider.front_axle", "Front axle, rider aboard", _BIKE, Kind.QUANTITY, "mass", "kg", 15, 400, 0.5, 1, plus_minus=1,
        main=True, how=_ABOARD,
    ),
    Field(
        "rider.rear_axle", "Rear axle, rider aboard", _BIKE, Kind.QUANTITY, "mass", "kg", 15, 500, 0.5, 1, plus_minus=1,
        main=True, how=_ABOARD,
    ),
    Field(
        "bike.mass", "Bike, ready to ride", _BIKE, Kind.QUANTITY, "mass", "kg", 40, 450, 1, 0, plus_minus=2,
        usual="bike mass", default=Default("bike mass"), unless=(("bike.front_axle", "bike.rear_axle"),),
        how="With all fluids and the usual fuel. Best: both axle readings added up.",
    ),
    Field(
        "bike.front_share", "Bike's weight on the front", _BIKE, Kind.QUANTITY, "share", "%", 35, 65, 0.5, 1, plus_minus=1,
        usual="bike front share", default=Default("bike front share"), unless=(("bike.front_axle",), ("bike.rear_axle",)),
        how="Front axle reading divided by both together, bike alone.",
    ),
    Field(
        "rider.front_share_sitting", "Rider's weight on the front, sitting", _BIKE, Kind.QUANTITY, "share", "%", 10, 65, 1, 0,
        plus_minus=5, usual="rider front share sitting", default=Default("rider front share sitting"),
        how="What the front axle gains when the rider sits on the bike, divided by the rider's weight.",
    ),
    Field(
        "rider.front_share_standing", "Rider's weight on the front, standing", _BIKE, Kind.QUANTITY, "share", "%", 15, 70, 1, 0,
        plus_minus=5, usual="rider front share standing", default=Default("rider front share standing"),
        how="What the front axle gains when the rider stands on the pegs, divided by the rider's weight.",
    ),
    Field(
        "bike.carries", "Also carrying", _BIKE, Kind.CHOICE, default=Default(choice="nothing", choice_by_use=dict.fromkeys(SOLD_LOADED, "both")),
        choices={"nothing": "Nothing", "luggage": "Luggage", "passenger": "A passenger", "both": "Passenger and luggage"},
        how="What else is on the bike when rider sag is read and when it is ridden. Free sag is read without it.", typed="stated",
    ),
    Field(
        "rider.passenger", "Passenger in full kit", _BIKE, Kind.QUANTITY, "mass", "kg", 0, 160, 1, 0, plus_minus=1,
        usual="passenger", default=Default("passenger", value=72, plus_minus=13), when=_PASSENGER, main=True, how="On bathroom scales, in full kit.",
    ),
    Field(
        "rider.passenger_front_share", "Passenger's weight on the front", _BIKE, Kind.QUANTITY, "share", "%", -10, 40, 1, 0,
        plus_minus=3, usual="passenger front share", default=Default("passenger front share", value=8, plus_minus=4), when=_PASSENGER,
        how="What the front axle gains when the passenger gets on, divided by the passenger's weight.",
    ),
    Field(
        "rider.luggage", "Luggage", _BIKE, Kind.QUANTITY, "mass", "kg", 0, 120, 1, 0, plus_minus=1, usual="luggage",
        default=Default("luggage", value=20, plus_minus=15), when=_LUGGAGE, main=True, how="Cases packed, on bathroom scales.",
    ),
    Field(
        "rider.luggage_front_share", "Luggage weight on the front", _BIKE, Kind.QUANTITY, "share", "%", -30, 60, 1, 0,
        plus_minus=3, usual="luggage front share", default=Default("luggage front share", value=5, plus_minus=5), when=_LUGGAGE,
        how="What the front axle gains with the luggage on, divided by its weight.",
    ),
    Field(
        "bike.rake", "Rake", _BIKE, Kind.QUANTITY, "angle", "°", 10, 40, 0.5, 1, plus_minus=0.5, usual="rake",
        default=Default("rake"), end="front",
        how="Steering axis from vertical: from the manual, or an angle gauge on the stanchion with the bike level on its wheels.", typed="stated",
    ),
    Field(
        "bike.wheelbase", "Wheelbase", _BIKE, Kind.QUANTITY, "length", "mm", 900, 1900, 5, 0, plus_minus=5,
        how="Axle to axle along the ground. Needed for what the new sags do to the rake, and for brake dive.",
    ),
    Field(
        "bike.braking", "Braking to check", _BIKE, Kind.QUANTITY, "acceleration", "G", 0.05, 1.3, 0.05, 2, end="front", typed="stated", decision=True,
        how="How hard the bike slows, in g (9.81 m/s²): 0.3 is gentle, 0.6 firm, 0.9 about the limit on a dry road. Leave empty to skip brake dive.",
    ),
    Field(
        "bike.centre_height", "Centre of mass, height", _BIKE, Kind.QUANTITY, "length", "mm", 300, 1200, 10, 0, plus_minus=30, needs=_BRAKED,
        default=Default(value=650, plus_minus=100, reason="a rider aboard most bikes; common practice, no source"), end="front",
        how="Bike and rider together, above the ground. Weigh the front axle level, then with the rear raised: the gain gives it.",
    ),
    Field(
        "bike.front_braking", "Front tyre's share of the braking", _BIKE, Kind.QUANTITY, "share", "%", 0, 100, 5, 0, needs=_BRAKED, end="front",
        default=Default(value=100, reason="the front brake alone"), how="Of the total braking force; 100 % is the front brake alone.", typed="stated", decision=True,
    ),
)  # fmt: skip
