"""With the desk's Python: the milliseconds of each answer, as JSON. Argument: a JSON file with the requests."""

import json
import sys
from pathlib import Path
from time import perf_counter

from calc.boundary import answer

spent = []
for request in json.loads(Path(sys.argv[1]).read_text()):
    started = perf_counter()
    reply = answer(request)
    spent.append(1000 * (perf_counter() - started))
    if not reply.startswith('{"kind":"report"'):
        raise SystemExit(reply)
print(json.dumps(spent))
