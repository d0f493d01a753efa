"""Forks of every kind whose legs are drawn, and what is drawn of one."""

from __future__ import annotations

from typing import Any

from calc.demo import jobs
from tests.support.documents import changed, demo
from tests.support.plain import part


def stated(value: str) -> dict[str, str]:
    return {"value": value, "origin": "stated"}


def front(document: dict[str, Any]) -> dict[str, Any]:
    data = part(document, "front", False)["end"]
    assert data["state"] != "refused", data
    return data


def section(document: dict[str, Any]) -> dict[str, Any]:
    found = front(document)["section"]
    assert found is not None
    return found


def changed_demo(**entries: str) -> dict[str, Any]:
    return demo({f"front.{key}": stated(value) for key, value in entries.items()})


def sealed(**entries: str) -> dict[str, Any]:
    """The trail demo's fork with its cartridge closed."""
    changes: dict[str, Any] = {f"front.{key}": stated(value) for key, value in ({"cartridge_state": "as built"} | entries).items()}
    return changed(jobs()["trail"], changes)


# The demo whose sags correct its readings, with these only compared: what is drawn is held to the readings themselves.
UNCORRECTED = changed(jobs()["high pass"], {"bike.sags_correct": stated("no")})

KINDS = {
    "open, upside-down": demo(),
    "open, conventional": UNCORRECTED,
    "opened cartridge": jobs()["trail"],
    "sealed, spring-loaded piston": sealed(),
    "sealed, vented piston": sealed(piston_back="vented"),
    "sealed, gas": changed(sealed(cartridge_fill="gas"), {"front.charge_by": None}),
    "sealed, leaking all along": changed(sealed(cartridge_fill="gas", cartridge_state="seal leaking"), {"front.charge_by": None}),
    "sealed, small leak": changed(sealed(cartridge_fill="gas", cartridge_state="seal leaking", leak="small"), {"front.charge_by": None}),
    "sealed, joined later": changed(sealed(cartridge_fill="gas", cartridge_state="seal leaking", joined_stroke="150 mm"), {"front.charge_by": None}),
    "sealed, piston leaking": sealed(cartridge_state="seal leaking"),
    "sealed, piston behind a small leak": sealed(cartridge_state="seal leaking", leak="small"),
    "air": changed_demo(air="air leg"),
    "air with a second volume and a coil": changed_demo(air="air leg", second="yes", air_coil="yes", rate="1.5 N/mm", air_in="both", air_pressure="6 bar"),
    "spacer, gap read with the spring in": changed_demo(gap_read="in", spacer_volume="14 ml", spacer_length="40 mm"),
    "gap read extended": changed(changed_demo(gap_state="extended", gap_left="345 mm", gap_right="345 mm", end_target="energy", end_energy="205 J"), {"standard.gap": stated("340 mm")}),
    "stacked": changed_demo(spring_kind="stacked", second_rate="9 N/mm", second_room="20 mm"),
    "nested": changed_demo(spring_kind="nested", second_rate="2 N/mm", second_later="120 mm"),
    "unequal": changed_demo(spring_kind="unequal", rate_right="4.6 N/mm"),
    "spring in one leg": changed_demo(springs_in="one", rate="8.6 N/mm"),
    "wire and coil": changed_demo(rate_from="wire", wire="4.6 mm", coil_diameter="38 mm", coils="30", free_length="470 mm"),
}  # fmt: skip
