"""How a reading is asked for, as an order to the hand."""

from __future__ import annotations

from calc.job import Job
from calc.job.fields import FIELDS

_ASKED = {
    "rider.mass": "Weigh the rider in full kit",
    "rider.front_axle": "Weigh the front axle with the rider aboard",
    "rider.rear_axle": "Weigh the rear axle with the rider aboard",
    "rider.front_share_standing": "Weigh the front axle with the rider aboard, standing",
    "rider.front_share_sitting": "Weigh the front axle with the rider aboard, sitting",
    "bike.front_axle": "Weigh the front axle, bike alone",
    "bike.rear_axle": "Weigh the rear axle, bike alone",
    "bike.mass": "Weigh both axles, bike alone",
    "bike.front_share": "Weigh both axles, bike alone",
    "bike.rake": "Take the rake by angle gauge, or from the manual",
    "standard.rider": "Find out which rider the bike is sold for",
    "standard.fork_rate": "Find out which fork springs it was sold with",
    "standard.gap": "Look up the gap as sold",
    "standard.shock_rate": "Find out which shock spring it was sold with",
    "front.travel": "Measure the fork travel, or look it up",
    "front.unsprung": "Weigh the front wheel and lower legs",
    "front.rate": "Read the marking on the fork springs, or better put one on a tester",
    "front.gap_left": "Read the gap, left",
    "front.gap_right": "Read the gap, right",
    "front.seal_diameter": "Measure the chrome tube by vernier",
    "front.collapsed_stroke": "Measure exposed chrome, hanging and collapsed",
    "front.raised_height": "Pour oil in again and read the rise",
    "front.cap_volume": "Put each cap in a jug of water",
    "front.spring_steel": "Put the fork spring on a kitchen scale",
    "front.cartridge_charge": "Press the cartridge's rod end on a kitchen scale",
    "front.charge_force": "Press the cartridge's rod end on a kitchen scale again",
    "front.cartridge_gas": "Find out the cartridge's gas volume",
    "front.cartridge_piston": "Measure the spring-loaded piston by vernier",
    "front.piston_spring": "Put the cartridge piston's spring on a tester",
    "front.oil_moved": "Drain the oil around the cartridge and measure it",
    "front.filled_kept": "Fill a leg that is dry",
    "front.filled_left": "Measure the oil filled, left",
    "front.filled_right": "Measure the oil filled, right",
    "front.brim_volume": "Fill the collapsed leg to the brim, from dry",
    "front.brim_poured": "Fill to the brim again from a known gap",
    "front.oil_volume": "Measure the oil as it is filled",
    "front.air_pressure": "Read the air pressure, cold",
    "front.air_piston": "Measure the air piston by vernier",
    "front.air_volume": "Fill the main chamber with oil from a syringe",
    "front.balance_pressure": "Read the balance chamber's pressure, cold",
    "front.balance_volume": "Fill the balance chamber with oil from a syringe",
    "place.ridden_temperature": "Take the leg's temperature after a ride",
    "rear.travel": "Measure the rear wheel travel, or look it up",
    "rear.unsprung": "Weigh the rear wheel and swingarm",
    "rear.leverage": "Measure wheel travel over shock stroke",
    "rear.leverage_fall": "Measure shock length at five or more heights of the wheel",
    "rear.pairs": "Measure shock length at more heights of the wheel, and again at those you have",
    "rear.rate": "Read the marking on the shock spring, or better put it on a tester",
    "rear.charge": "Have the shock's charge checked by a licensed workshop",
    "rear.rod_diameter": "Measure the shock rod by vernier",
    "front.rate_right": "Put the right fork spring on a tester",
    "front.second_rate": "Put the second fork spring on a tester",
    "front.wire": "Measure the fork spring's wire by vernier, on bare steel",
    "front.coil_diameter": "Measure the fork spring's outside by vernier",
    "front.coils": "Count the fork spring's coils, to the quarter turn",
    "front.shear_modulus": "Put the fork spring on a tester: the steel stays unsure",
    "front.tester": "Put the fork spring on the tester again, with more points",
    "rear.tester": "Put the shock spring on the tester again, with more points",
    "front.tester_error": "Find out how true the tester is",
    "rear.tester_error": "Find out how true the tester is",
    "front.table_error": "Measure the fork spring's table on a spring tester",
    "front.free_length": "Measure the fork spring's free length, on a table",
    "front.space": "Measure the spring's space at full extension",
    "rear.second_rate": "Put the second shock spring on a tester",
    "rear.wire": "Measure the shock spring's wire by vernier, on bare steel",
    "rear.coil_diameter": "Measure the shock spring's outside by vernier",
    "rear.coils": "Count the shock spring's coils, to the quarter turn",
    "rear.shear_modulus": "Put the shock spring on a tester: the steel stays unsure",
    "rear.table_error": "Measure the shock spring's table on a spring tester",
}


# What is asked for where the marking was entered already.
_ASKED_AGAIN = {
    "front.rate": "Put the fork springs on a tester",
    "rear.rate": "Put the shock spring on a tester",
}


def asked(job: Job, path: str) -> str:
    """The order for one field; the label for those that have none of their own."""
    if path in _ASKED_AGAIN and job.entered(path):
        return _ASKED_AGAIN[path]
    return _ASKED.get(path, f"Measure more closely: {FIELDS[path].label.lower()}")


_UNKNOWN = {
    "standard.rider": "the rider it is sold for is not known",
    "standard.fork_rate": "the fork springs it was sold with are not known",
    "standard.shock_rate": "the shock spring it was sold with is not known",
    "front.rate": "the springs that are in are not read",
    "rear.rate": "the spring that is in is not read",
    "rear.leverage": "the leverage is not measured",
    "bike.mass": "the bike is not weighed",
    "bike.front_share": "the bike is not weighed",
    "rider.front_share_standing": "the bike is not weighed with the rider aboard",
    "rider.front_share_sitting": "the bike is not weighed with the rider aboard",
}


_UNSURE = {
    "standard.rider": "the rider it is sold for",
    "standard.fork_rate": "the rate of the fork springs it was sold with",
    "standard.shock_rate": "the rate of the shock spring it was sold with",
    "front.rate": "the rate of the springs that are in",
    "rear.rate": "the rate of the spring that is in",
}


def unknown(job: Job, path: str) -> str:
    """What is not known, as the reason why nothing can be chosen yet."""
    label = FIELDS[path].label
    label = label if label[1:2].isupper() else label[0].lower() + label[1:]
    if job.entered(path):
        return f"{_UNSURE.get(path, label)} is not known well enough"
    return _UNKNOWN.get(path, f"{label} is not {'known' if FIELDS[path].typed == 'stated' else 'measured'}")
