"""With the desk's Python: write into a folder what the page takes from the core.

schema.json, schema.ts, version.ts, report.schema.json (of the replies' types), demos/<key>.json ({job, report}) and demos.json (their titles).
"""

import json
import sys
from pathlib import Path

from pydantic import TypeAdapter
from pydantic.json_schema import GenerateJsonSchema, JsonSchemaValue

from calc.boundary import Reply, answer
from calc.demo import jobs
from calc.job.export import schema, typescript
from calc.report import VERSION

folder = Path(sys.argv[1])


def report_of(name: str, job: dict) -> dict:
    reply = json.loads(answer(json.dumps({"kind": "size", "job": job})))
    if reply["kind"] != "report":
        raise SystemExit(f"demo job {name} cannot be sized: {reply}")
    return reply["report"]


def write_json(name: str, value: object) -> None:
    text = json.dumps(value, ensure_ascii=False, allow_nan=False, separators=(",", ":"))
    (folder / name).write_text(text + "\n", encoding="utf-8")


class Plain(GenerateJsonSchema):
    """Without what the maker of TypeScript would take for more types, and with pairs as it reads them."""

    def field_title_should_be_set(self, schema: object) -> bool:
        return False

    def field_is_required(self, field: object, total: bool) -> bool:
        return True

    def tuple_schema(self, schema: object) -> JsonSchemaValue:
        made = super().tuple_schema(schema)
        return made | {"items": made.pop("prefixItems")} if "prefixItems" in made else made


demos = jobs()
if not demos:
    raise SystemExit("calc/demo holds no job")
(folder / "demos").mkdir(exist_ok=True)
for name, job in demos.items():
    write_json(f"demos/{name.replace(' ', '-')}.json", {"job": job, "report": report_of(name, job)})
titles = [{"key": name.replace(" ", "-"), "name": job["name"], "use": job["bike"]["use"]["value"]} for name, job in demos.items()]
write_json("demos.json", titles)
write_json("schema.json", schema())
(folder / "version.ts").write_text(f"/** Of the report: one that was kept from before another version is not shown. */\nexport const REPORT_VERSION = {VERSION}\n")
(folder / "schema.ts").write_text(typescript(), encoding="utf-8")
write_json("report.schema.json", {"title": "Reply"} | TypeAdapter(Reply).json_schema(mode="serialization", schema_generator=Plain))
