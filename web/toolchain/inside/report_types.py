"""With the desk's Python: write the JSON Schema of the core's replies, of which the page's types are made. Argument: the file."""

import json
import sys
from pathlib import Path

from pydantic import TypeAdapter
from pydantic.json_schema import GenerateJsonSchema, JsonSchemaValue
from pydantic_core.core_schema import TupleSchema

from calc.boundary import Reply


class Plain(GenerateJsonSchema):
    """Without what the maker of TypeScript would take for more types, and with pairs as it reads them."""

    def field_title_should_be_set(self, schema: object) -> bool:
        return False

    def field_is_required(self, field: object, total: bool) -> bool:
        return True

    def tuple_schema(self, schema: TupleSchema) -> JsonSchemaValue:
        made = super().tuple_schema(schema)
        return made | {"items": made.pop("prefixItems")} if "prefixItems" in made else made


made = {"title": "Reply"} | TypeAdapter(Reply).json_schema(mode="serialization", schema_generator=Plain)
Path(sys.argv[1]).write_text(json.dumps(made), encoding="utf-8")
