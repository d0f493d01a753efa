"""Texts that hold one of the names which `calc.job.export` declares to the page: there they have types of their own."""

from __future__ import annotations

from collections.abc import Callable
from typing import Annotated, Any


class Declared:
    """In `Annotated[str, Declared("FieldPath")]`: the page's type of it."""

    def __init__(self, typescript: str) -> None:
        self.typescript = typescript

    def __get_pydantic_json_schema__(self, core: Any, handler: Callable[[Any], dict[str, Any]]) -> dict[str, Any]:
        """Asked by the build, which makes the page's types; pydantic is no part of the core."""
        return {**handler(core), "tsType": self.typescript}


FieldPath = Annotated[str, Declared("FieldPath")]
MaybePath = Annotated[str, Declared("FieldPath | ''")]
Origin = Annotated[str, Declared("Origin")]
MaybeUse = Annotated[str, Declared("Use | ''")]
