"""With the desk's Python: write into a folder what the page takes from the core.

schema.json, help.json, ranges.json, mybike.json, schema.ts and version.ts; then, unless "schema" is asked for alone,
demos/<key>.json ({job, report}) and demos.json (their titles).
"""

import json
import sys
from pathlib import Path

from calc.boundary import answer
from calc.demo import jobs
from calc.job.export import schema, typescript
from calc.job.questions import exported
from calc.report import VERSION
from web.toolchain.places import version

folder = Path(sys.argv[1])


def report_of(name: str, job: object) -> object:
    reply = json.loads(answer(json.dumps({"kind": "size", "job": job})))
    if reply["kind"] != "report":
        raise SystemExit(f"demo job {name} cannot be sized: {reply}")
    return reply["report"]


def write_json(name: str, value: object) -> None:
    text = json.dumps(value, ensure_ascii=False, allow_nan=False, separators=(",", ":"))
    (folder / name).write_text(text + "\n", encoding="utf-8")


def write_schema() -> None:
    whole = schema()
    # What the first screen does not need comes later: how each field is measured, and the trade's ranges.
    write_json("help.json", {path: field.pop("how") for path, field in whole["fields"].items()})
    write_json("ranges.json", whole.pop("ranges"))
    write_json("schema.json", whole)
    write_json("mybike.json", exported())
    (folder / "schema.ts").write_text(typescript(), encoding="utf-8")
    words = "/** Of the report: one that was kept from before another version is not shown. */"
    lines = [f"export const VERSION = '{version()}'", words, f"export const REPORT_VERSION = {VERSION}"]
    (folder / "version.ts").write_text("\n".join(lines) + "\n")


def write_demos() -> None:
    demos = jobs()
    if not demos:
        raise SystemExit("calc/demo holds no job")
    (folder / "demos").mkdir(exist_ok=True)
    for name, job in demos.items():
        write_json(f"demos/{name.replace(' ', '-')}.json", {"job": job, "report": report_of(name, job)})
    titles = [{"key": name.replace(" ", "-"), "name": job["name"], "use": job["bike"]["use"]["value"]}
              for name, job in demos.items()]  # fmt: skip
    write_json("demos.json", titles)


write_schema()
if sys.argv[2:] != ["schema"]:
    write_demos()
