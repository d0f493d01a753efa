"""Every field of a job, in the order of the job at the bench."""

from __future__ import annotations

from collections.abc import Mapping

from calc.job.field import Field
from calc.job.fields.bike import BIKE
from calc.job.fields.front import FRONT
from calc.job.fields.oil import OIL
from calc.job.fields.place import PLACE
from calc.job.fields.rear import REAR
from calc.job.fields.standard import STANDARD

FIELDS: Mapping[str, Field] = {f.path: f for f in (*BIKE, *STANDARD, *FRONT, *OIL, *PLACE, *REAR)}
GROUPS: tuple[str, ...] = tuple(dict.fromkeys(f.group for f in FIELDS.values()))
