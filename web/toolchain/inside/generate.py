"""With the desk's Python: write schema.json, schema.ts and demo.json ({name: {job, report}}) into a folder."""

import json
import sys
from pathlib import Path

from calc.boundary import answer
from calc.demo import jobs
from calc.job.export import schema, typescript

folder = Path(sys.argv[1])


def report_of(name: str, job: dict) -> dict:
    reply = json.loads(answer(json.dumps({"kind": "size", "job": job})))
    if reply["kind"] != "report":
        raise SystemExit(f"demo job {name} cannot be sized: {reply}")
    return reply["report"]


def write_json(name: str, value: object) -> None:
    text = json.dumps(value, ensure_ascii=False, allow_nan=False, indent=1)
    (folder / name).write_text(text + "\n", encoding="utf-8")


demos = {name: {"job": job, "report": report_of(name, job)} for name, job in jobs().items()}
if not demos:
    raise SystemExit("calc/demo holds no job")
write_json("schema.json", schema())
write_json("demo.json", demos)
(folder / "schema.ts").write_text(typescript(), encoding="utf-8")
