"""How a reading is asked for, as an order to the hand."""

from __future__ import annotations

from calc.job.fields import FIELDS

_ASKED = {
    "rider.mass": "Weigh the rider, kitted",
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
    "standard.fork_rate": "Find out the fork springs as sold",
    "standard.gap": "Look up the gap as sold",
    "standard.shock_rate": "Find out the shock spring as sold",
    "front.travel": "Measure the fork travel, or look it up",
    "front.unsprung": "Weigh the front wheel and lower legs",
    "front.rate": "Put the fork spring on a tester",
    "front.gap_left": "Read the gap, left",
    "front.gap_right": "Read the gap, right",
    "front.seal_diameter": "Measure the chrome tube by vernier",
    "front.collapsed_stroke": "Measure exposed chrome, hanging and collapsed",
    "front.raised_height": "Pour oil in again and read the rise",
    "front.cap_volume": "Put each cap in a jug of water",
    "front.spring_steel": "Put the fork spring on a kitchen scale",
    "rear.travel": "Measure the rear wheel travel, or look it up",
    "rear.unsprung": "Weigh the rear wheel and swingarm",
    "rear.leverage": "Measure wheel travel over shock stroke",
    "rear.leverage_fall": "Measure shock length at five or more heights of the wheel",
    "rear.pairs": "Measure shock length at more heights of the wheel, and again at those you have",
    "rear.rate": "Put the shock spring on a tester",
    "rear.charge": "Have the shock's charge checked by a licensed workshop",
    "rear.rod_diameter": "Measure the shock rod by vernier",
    "front.rate_right": "Put the right fork spring on a tester",
    "front.second_rate": "Put the second fork spring on a tester",
    "front.wire": "Measure the fork spring's wire by vernier, on bare steel",
    "front.coil_diameter": "Measure the fork spring's outside by vernier",
    "front.coils": "Count the fork spring's coils, to the quarter turn",
    "front.shear_modulus": "Put the fork spring on a tester: the steel stays unsure",
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


def asked(path: str) -> str:
    """The order for one field; the label for those that have none of their own."""
    return _ASKED.get(path, f"Measure more closely: {FIELDS[path].label.lower()}")
