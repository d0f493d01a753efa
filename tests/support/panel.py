"""Ordinary jobs and what a bench would fit. Common practice, no source: bikes and riders are invented, the answers are a tuner's.

How the answers were made, without the model: the rate follows the sprung load at its axle. Off road a standing rider has two
fifths of the weight on the front, so 18 kg of rider are about a tenth more at either end; on the road a sitting one has a little
less than half; on a heavy travel bike a rider is the smaller part of the load. What is in stays when it is within a step.
"""

from __future__ import annotations

from dataclasses import dataclass, field


@dataclass(frozen=True)
class Case:
    """One job: kind of riding, rider [kg], what else is entered, and the rates [N/mm] that a bench would sign, lowest and highest."""

    name: str
    use: str
    rider: float
    front: tuple[float, float]
    rear: tuple[float, float]
    why: str
    entries: dict[str, str] = field(default_factory=dict)


def sold(front: str, rear: str, **more: str) -> dict[str, str]:
    """Springs that are in are those it was sold with."""
    return {"front.rate": front, "rear.rate": rear, "standard.fork_springs": "as sold", "standard.shock_spring": "as sold"} | {
        path.replace("__", "."): value for path, value in more.items()
    }


LIGHT, HEAVY = "lighter than the standard rider", "heavier than the standard rider"

PANEL = (
    # Off road, springs as sold
    Case("enduro, standard rider", "enduro", 86, (4.2, 4.2), (48, 48), "nothing to change", sold("4.2", "48")),
    Case("enduro, 2 kg over", "enduro", 88, (4.2, 4.2), (48, 48), "nobody changes a spring for 2 kg", sold("4.2", "48")),
    Case("enduro, 95 kg", "enduro", 95, (4.2, 4.6), (48, 52), "5 % more at either end: a step or none", sold("4.2", "48")),
    Case("enduro, 104 kg", "enduro", 104, (4.6, 4.8), (52, 54), "a tenth more at either end", sold("4.2", "48")),
    Case("enduro, 115 kg", "enduro", 115, (4.8, 5.0), (54, 58), "a sixth more", sold("4.2", "48")),
    Case("enduro, 70 kg", "enduro", 70, (3.8, 4.0), (42, 44), "a tenth less", sold("4.2", "48")),
    Case("enduro, 60 kg", "enduro", 60, (3.4, 3.8), (38, 42), "a sixth less", sold("4.2", "48")),
    Case("enduro without linkage", "enduro", 86, (4.2, 4.2), (75, 75), "kept, whatever the leverage", sold("4.2", "75", rear__leverage="2.95", rear__leverage_fall="5 %")),
    Case("motocross, standard rider", "motocross", 86, (4.6, 4.6), (50, 50), "nothing to change", sold("4.6", "50")),
    Case("motocross, 95 kg", "motocross", 95, (4.6, 5.0), (50, 54), "5 % more", sold("4.6", "50")),
    Case("motocross, 105 kg", "motocross", 105, (5.0, 5.2), (54, 58), "a tenth more", sold("4.6", "50")),
    Case("motocross, 68 kg", "motocross", 68, (4.0, 4.3), (44, 46), "a tenth less", sold("4.6", "50")),
    Case("motocross, stiff springs as sold", "motocross", 86, (5.0, 5.0), (56, 56), "sold stiff is what suits it", sold("5.0", "56")),
    Case("trials, standard rider", "trials", 75, (4.0, 4.0), (62, 62), "nothing to change", sold("4.0", "62")),
    Case("trials, 90 kg", "trials", 90, (4.4, 4.8), (68, 72), "an eighth more", sold("4.0", "62")),
    Case("youth, 43 kg", "youth", 43, (2.6, 3.0), (32, 36), "an eighth less", sold("3.2", "40")),
    Case("youth, standard rider", "youth", 57, (3.2, 3.2), (40, 40), "nothing to change", sold("3.2", "40")),
    Case("supermoto, 84 kg", "supermoto", 84, (5.0, 5.0), (56, 56), "nothing to change", sold("5.0", "56")),
    Case("supermoto, 100 kg", "supermoto", 100, (5.2, 5.6), (60, 64), "a tenth more", sold("5.0", "56")),
    Case("dual-sport, 89 kg", "dual-sport", 89, (5.0, 5.0), (68, 68), "nothing to change", sold("5.0", "68")),
    Case("dual-sport, 108 kg", "dual-sport", 108, (5.2, 5.6), (72, 78), "8-11 % more", sold("5.0", "68")),
    # Road and travel
    Case("road, standard rider", "road", 87, (8.8, 8.8), (90, 90), "nothing to change", sold("8.8", "90")),
    Case("road, 104 kg", "road", 104, (9.0, 9.6), (90, 95), "6-8 % more: a step at the rear or none", sold("8.8", "90")),
    Case("road, 64 kg", "road", 64, (7.8, 8.4), (80, 80), "a tenth less", sold("8.8", "90")),
    Case("road, twin shocks", "road", 87, (8.8, 8.8), (15, 15), "kept: two shocks share the load", sold("8.8", "15", rear__shocks="2", rear__leverage="1.15", rear__leverage_fall="2 %")),
    Case("road, soft as sold, standard rider", "road", 87, (7.4, 7.4), (80, 80), "soft, but what the maker chose and not outside the range", sold("7.4", "80")),
    Case("track, standard rider", "track", 81, (10.2, 10.2), (95, 95), "nothing to change", sold("10.2", "95")),
    Case("track, 95 kg", "track", 95, (10.4, 11.0), (95, 105), "6-8 % more", sold("10.2", "95")),
    Case("track, 66 kg", "track", 66, (9.4, 9.8), (85, 95), "7-9 % less: about a step of 5 at the rear", sold("10.2", "95")),
    Case("adventure, standard rider", "adventure", 91, (6.8, 6.8), (94, 94), "nothing to change", sold("6.8", "94")),
    Case("adventure, 110 kg", "adventure", 110, (6.8, 7.4), (98, 104), "5-9 % more: the rider is the smaller part of the load", sold("6.8", "94")),
    Case("adventure, 70 kg", "adventure", 70, (6.2, 6.8), (84, 90), "6-9 % less", sold("6.8", "94")),
    Case("two-up, standard rider", "two-up", 91, (7.0, 7.0), (134, 134), "nothing to change", sold("7.0", "134")),
    Case("two-up, 110 kg", "two-up", 110, (7.0, 7.4), (134, 142), "5 % more in all", sold("7.0", "134")),
    # All assumed: only the riding and the rider
    Case("enduro, nothing known", "enduro", 86, (4.2, 4.2), (46, 46), "nothing says that anything must change"),
    Case("road, nothing known", "road", 87, (8.8, 8.8), (90, 90), "nothing says that anything must change"),
    Case("track, nothing known", "track", 81, (10.2, 10.2), (95, 95), "nothing says that anything must change"),
    # Weighed
    Case("enduro, weighed, heavy rider far forward", "enduro", 104, (4.6, 5.0), (48, 54), "more of the rider on the front than assumed",
         sold("4.2", "48", bike__front_axle="54.5 kg", bike__rear_axle="59 kg", rider__front_axle="100 kg", rider__rear_axle="117.5 kg")),
    Case("enduro, standard rider stated as 75 kg", "enduro", 86, (4.2, 4.6), (48, 52), "sold for a lighter rider: 5-7 % more load than it is sprung for",
         sold("4.2", "48", standard__rider="75 kg")),
    # Changed, not known, shelves, pairs, wishes
    Case("enduro, somebody fitted 5.0 and 58", "enduro", 86, (4.2, 4.4), (46, 50), "far too stiff for this rider: back to what it was sold with",
         {"front.rate": "5.0", "rear.rate": "58", "standard.fork_springs": "changed", "standard.shock_spring": "changed",
          "standard.fork_rate": "4.2", "standard.shock_rate": "48"}),
    Case("enduro, changed to the right ones", "enduro", 104, (4.6, 4.6), (52, 52), "somebody has done the job already",
         {"front.rate": "4.6", "rear.rate": "52", "standard.fork_springs": "changed", "standard.shock_spring": "changed",
          "standard.fork_rate": "4.2", "standard.shock_rate": "48"}),
    Case("enduro, shelf of three", "enduro", 104, (4.6, 4.6), (52, 52), "the nearest on the shelf",
         sold("4.2", "48", front__buy="stock", front__stock="4.0; 4.6; 5.2", rear__buy="stock", rear__stock="44; 52; 60")),
    Case("enduro, pairs allowed", "enduro", 95, (4.2, 4.6), (48, 52), "a pair is half a step",
         sold("4.2", "48", front__buy="series-pairs")),
    Case("enduro, wants it stiffer", "enduro", 86, (4.6, 5.2), (56, 62), "asked for: a tenth more in frequency is a fifth in rate",
         sold("4.2", "48", front__target_frequency="2.25 Hz", rear__target_frequency="1.6 Hz")),
    Case("enduro, more sag wanted", "enduro", 86, (4.2, 4.2), (48, 48), "sag is preload's business first",
         sold("4.2", "48", front__target_sag="72 mm", rear__target_sag="110 mm")),
    Case("enduro, closed cartridge", "enduro", 104, (4.4, 4.8), (52, 54), "the cartridge is the same as sold: the rider decides",
         sold("4.2", "48", front__air="sealed cartridge")),
)  # fmt: skip
