"""Cautions, and what is left out. Common practice, no source; the maker's manual takes precedence."""

from __future__ import annotations

CAUTIONS: dict[str, tuple[str, str]] = {
    "gas": (
        "Gas under pressure.",
        "Face and hands off the line of the screw, cloth over it; wheel off the ground, legs hanging and cool. The maker's manual takes precedence.",
    ),
    "springs": (
        "Springs push the cap.",
        "Back the adjuster off, hold the cap down with the heel of the hand as the thread ends, eyes to the side. The maker's manual takes precedence.",
    ),
    "stand": (
        "The bike on a stand.",
        "Strap it so that it cannot tip when a wheel or a leg comes out. Follow local rules and use the maker's lifting points.",
    ),
    "shock": (
        "Never open a charged shock.",
        "Its gas is at 7-12 bar or more. Charging and opening are for a licensed workshop. The spring is loaded: use the proper compressor.",
    ),
    "torque": ("Torque.", "Every fastener to the maker's figure, clamps in steps, axle pinch bolts last, after pumping the fork."),
    "ride": (
        "First ride.",
        "Ten easy minutes on a quiet track, then look for leaks, loose bolts and rubbing before riding on. One change at a time.",
    ),
}

CARTRIDGE_CAUTION = (
    "A sealed cartridge holds pressure.",
    "Let its gas off, or its spring-loaded piston out, only the maker's way, before any cap is turned. Eyes and hands off its line.",
)

PUMPED_CAUTION = (
    "An air spring is pumped up.",
    "Let all air off, balance chamber and second volume too, with the wheel off the ground, before any cap is turned. Use a suspension pump, never a compressor.",
)

LEFT_OUT = "Left out: damping and hydraulic stops, bump rubbers in every end force, top-out springs you have not entered, aerodynamic drag, chain pull. Where a hydraulic stop starts, more force is added."
