"""Bike and rider: what the axles carry."""

from __future__ import annotations

from calc.job.field import Default, Field, Kind, Part
from calc.practice import POSTURE, SOLD_LOADED, USES

_BIKE = Part.BIKE
_AXLE = "Both wheels level, the other wheel blocked up to the height of the scale; fuel as ridden."
_ABOARD = "Kitted rider aboard in the posture named, feet on the pegs, a helper steadying by a fingertip; level as before."
_PASSENGER = {"bike.carries": ("passenger", "both")}
_LUGGAGE = {"bike.carries": ("luggage", "both")}
_BRAKED = ("bike.braking",)

BIKE = (
    Field(
        "bike.use", "Riding", _BIKE, Kind.CHOICE, choices=USES, main=True,
        how="Chooses the rows of common practice, and the posture in which sag is read.", typed="stated",
    ),
    Field(
        "rider.mass", "Rider, kitted", _BIKE, Kind.QUANTITY, "mass", "kg", 20, 200, 1, 0, plus_minus=1, main=True,
        usual="standard rider", default=Default("standard rider"),
        how="On a bathroom scale with everything worn on the ride: boots, helmet, pack, drink.",
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
        "rider.posture", "Posture on the scales", _BIKE, Kind.CHOICE, needs=("rider.front_axle", "rider.rear_axle"), choices={"standing": "Standing", "sitting": "Sitting"},
        default=Default(choice="standing", choice_by_use=POSTURE),
        how="How the rider was on the bike when the axle readings were taken.", typed="stated",
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
        how="All fluids and the usual fuel; the sum of both axle readings is best.",
    ),
    Field(
        "bike.front_share", "Bike's weight on the front", _BIKE, Kind.QUANTITY, "share", "%", 35, 65, 0.5, 1, plus_minus=1,
        usual="bike front share", default=Default("bike front share"), unless=(("bike.front_axle",), ("bike.rear_axle",)),
        how="Front axle reading over both axle readings, bike alone.",
    ),
    Field(
        "rider.front_share_sitting", "Rider's weight on the front, sitting", _BIKE, Kind.QUANTITY, "share", "%", 10, 65, 1, 0,
        plus_minus=5, usual="rider front share sitting", default=Default("rider front share sitting"),
        how="What the front axle gains with the rider sitting, over the rider's mass.",
    ),
    Field(
        "rider.front_share_standing", "Rider's weight on the front, standing", _BIKE, Kind.QUANTITY, "share", "%", 15, 70, 1, 0,
        plus_minus=5, usual="rider front share standing", default=Default("rider front share standing"),
        how="What the front axle gains with the rider standing, over the rider's mass.",
    ),
    Field(
        "bike.carries", "Carried besides the rider", _BIKE, Kind.CHOICE, default=Default(choice="nothing", choice_by_use=dict.fromkeys(SOLD_LOADED, "both")),
        choices={"nothing": "Nothing", "luggage": "Luggage", "passenger": "A passenger", "both": "Passenger and luggage"},
        how="What is aboard when rider sag is read and the bike is ridden. Free sag is read without it.", typed="stated",
    ),
    Field(
        "rider.passenger", "Passenger, kitted", _BIKE, Kind.QUANTITY, "mass", "kg", 0, 160, 1, 0, plus_minus=1,
        usual="passenger", default=Default("passenger", value=72, plus_minus=13), when=_PASSENGER, main=True, how="On a bathroom scale, kitted.",
    ),
    Field(
        "rider.passenger_front_share", "Passenger's weight on the front", _BIKE, Kind.QUANTITY, "share", "%", -10, 40, 1, 0,
        plus_minus=3, usual="passenger front share", default=Default("passenger front share", value=8, plus_minus=4), when=_PASSENGER,
        how="What the front axle gains with the passenger aboard, over the passenger's mass.",
    ),
    Field(
        "rider.luggage", "Luggage", _BIKE, Kind.QUANTITY, "mass", "kg", 0, 120, 1, 0, plus_minus=1, usual="luggage",
        default=Default("luggage", value=20, plus_minus=15), when=_LUGGAGE, main=True, how="Cases packed, on a bathroom scale.",
    ),
    Field(
        "rider.luggage_front_share", "Luggage's weight on the front", _BIKE, Kind.QUANTITY, "share", "%", -30, 60, 1, 0,
        plus_minus=3, usual="luggage front share", default=Default("luggage front share", value=5, plus_minus=5), when=_LUGGAGE,
        how="What the front axle gains with the luggage on, over its mass.",
    ),
    Field(
        "bike.rake", "Rake", _BIKE, Kind.QUANTITY, "angle", "°", 10, 40, 0.5, 1, plus_minus=0.5, usual="rake",
        default=Default("rake"), end="front",
        how="Steering axis from the vertical: the manual's value, or an angle gauge on the stanchion, bike level on its wheels.", typed="stated",
    ),
    Field(
        "bike.wheelbase", "Wheelbase", _BIKE, Kind.QUANTITY, "length", "mm", 900, 1900, 5, 0, plus_minus=5,
        how="Axle to axle along the ground; needed to say what the new sags do to the rake, and for brake dive.",
    ),
    Field(
        "bike.braking", "Braking to look at", _BIKE, Kind.QUANTITY, "acceleration", "gn", 0.05, 1.3, 0.05, 2, end="front", typed="stated", decision=True,
        how="How hard the bike slows, 1 gn being 9.81 m/s²: 0.3 gently, 0.6 firmly, 0.9 near the most on dry road. Empty: brake dive is not worked out.",
    ),
    Field(
        "bike.centre_height", "Height of the centre of mass", _BIKE, Kind.QUANTITY, "length", "mm", 300, 1200, 10, 0, plus_minus=30, needs=_BRAKED,
        default=Default(value=650, plus_minus=100, reason="a rider aboard most bikes; common practice, no source"), end="front",
        how="Bike and rider together, above the ground. Weigh the front axle level and with the rear raised: the gain tells it.",
    ),
    Field(
        "bike.front_braking", "Braking done by the front tyre", _BIKE, Kind.QUANTITY, "share", "%", 0, 100, 5, 0, needs=_BRAKED, end="front",
        default=Default(value=100, reason="the front brake alone"), how="Of the whole braking force.", typed="stated", decision=True,
    ),
)  # fmt: skip
