"""Every field of a job, in the order of the job at the bench."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import replace

from calc.job.field import Field, Part
from calc.job.fields.air import AIR
from calc.job.fields.bike import BIKE
from calc.job.fields.coil import coil_fields
from calc.job.fields.conditions import CONDITIONS
from calc.job.fields.damping import ROD_ALONE, damping_fields
from calc.job.fields.filling import FILLING
from calc.job.fields.front import FRONT
from calc.job.fields.linkage import LINKAGE, UNSPRUNG
from calc.job.fields.oil import OIL
from calc.job.fields.oil_sheet import OIL_SHEET
from calc.job.fields.place import PLACE
from calc.job.fields.push import PUSH
from calc.job.fields.rear import REAR
from calc.job.fields.ride import RIDE, ride_fields
from calc.job.fields.sags import CORRECTS, sag_fields
from calc.job.fields.service import SERVICE
from calc.job.fields.spring_fit import fit_fields, preload_fields
from calc.job.fields.spring_kinds import kind_fields
from calc.job.fields.standard import STANDARD

_FORK_KINDS = kind_fields("front", Part.SPRINGS, (1.0, 60.0), 400.0)
_SHOCK_KINDS = kind_fields("rear", Part.REAR, (10.0, 800.0), 200.0)
_FORK_FIT = (*preload_fields("front", Part.SPRINGS), *fit_fields("front", Part.SPRINGS, (8.0, 70.0), (100.0, 700.0)))
_SHOCK_FIT = (*preload_fields("rear", Part.REAR), *fit_fields("rear", Part.REAR, (10.0, 150.0), (80.0, 500.0)))
_FORK_COIL = coil_fields("front", Part.SPRINGS, (2.0, 8.0), (15.0, 60.0))
_SHOCK_COIL = coil_fields("rear", Part.REAR, (5.0, 22.0), (35.0, 120.0))

# What a fork on air alone has none of: of the fields declared for any fork, those that are of its coils.
_AIR_ALONE = {"front.air": ("air leg",), "front.air_coil": ("none",)}
_FRONT_COIL_KEYS = (
    "springs_in rate rate_right preload preload_min preload_max buy step stock free_length solid_length "
    "tried_rate tried_preload spring_steel spring_mass"
)
_OF_COILS = {
    *(f"front.{key}" for key in _FRONT_COIL_KEYS.split()),
    *("standard.fork_springs", "standard.fork_rate", "standard.fork_preload"),
    *(field.path for field in _FORK_KINDS if not field.path.startswith(("front.topout", "front.rubber"))),
    *(field.path for field in (*_FORK_FIT, *_FORK_COIL)),
}


def _without_coils(fields: Iterable[Field]) -> tuple[Field, ...]:
    return tuple(replace(field, idle=_AIR_ALONE) if field.path in _OF_COILS else field for field in fields)


FIELDS: Mapping[str, Field] = {
    f.path: f
    for f in (
        *BIKE,
        *_without_coils((*STANDARD, *FRONT, *_FORK_KINDS, *_FORK_FIT, *_FORK_COIL, *OIL)),
        *AIR,
        *PLACE,
        *REAR,
        *LINKAGE,
        *UNSPRUNG,
        *_SHOCK_KINDS,
        *_SHOCK_FIT,
        *_SHOCK_COIL,
        *CORRECTS,
        *sag_fields("front", "Axle centre to a mark on the yoke, along the leg"),
        *sag_fields("rear", "Axle centre to a dot straight above it"),
        *RIDE,
        *ride_fields("front", 400, "on the inner tube"),
        *ride_fields("rear", 150, "on the shock's shaft"),
        *CONDITIONS,
        *PUSH,
        *OIL_SHEET,
        ROD_ALONE,
        *damping_fields("front"),
        *damping_fields("rear"),
        *FILLING,
        *SERVICE,
    )
}
GROUPS: tuple[str, ...] = tuple(dict.fromkeys(f.group for f in FIELDS.values()))
