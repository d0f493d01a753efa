"""What the untuned page runs: numpy and pint as their introductions have them, then the core on the request."""

from pathlib import Path

import numpy  # noqa: F401
import pint

from calc.boundary import answer

UNITS: object = pint.UnitRegistry()  # pint's own, whole

answer(Path("request.json").read_text())
