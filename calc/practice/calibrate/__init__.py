"""Makes the typical values agree with each other: a standard setup for each kind of riding, calibrated under the model.

Run `python -m calc.practice.calibrate` to see what moves and whether `calibrated.py` holds it; `--write` writes it anew. It
knows the physics and scipy, so it is left out of the page and of what the core may import (see pyproject.toml).

Method: least squares. The standard rider sits on the standard setup, everything assumed. What goes into the model (masses,
shares, travel, leverage, rates, preload, gap) and what comes out of it (sags, ride frequency, end force over load) each move
from what was judged, in half-ranges, weighted by confidence, inside their ranges. Then one row after another is rounded to
what is sold or written, the rest following.
"""
