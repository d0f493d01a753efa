"""How many a test of very many takes: STANCHION_MORE=10 takes ten times as many, from further seeds."""

from __future__ import annotations

import os

TIMES = max(int(os.environ.get("STANCHION_MORE", "1")), 1)
