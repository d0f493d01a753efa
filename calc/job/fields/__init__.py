"""Every field of a job, in the order of the job at the bench."""

from __future__ import annotations

from collections.abc import Mapping

from calc.job.field import Field, Part
from calc.job.fields.bike import BIKE
from calc.job.fields.coil import coil_fields
from calc.job.fields.front import FRONT
from calc.job.fields.oil import OIL
from calc.job.fields.place import PLACE
from calc.job.fields.rear import REAR
from calc.job.fields.standard import STANDARD

_FORK_COIL = coil_fields("front", Part.SPRINGS, (2.0, 8.0), (15.0, 60.0))
_SHOCK_COIL = coil_fields("rear", Part.REAR, (5.0, 22.0), (35.0, 120.0))

FIELDS: Mapping[str, Field] = {f.path: f for f in (*BIKE, *STANDARD, *FRONT, *_FORK_COIL, *OIL, *PLACE, *REAR, *_SHOCK_COIL)}
GROUPS: tuple[str, ...] = tuple(dict.fromkeys(f.group for f in FIELDS.values()))
