"""Statements, the names that they make, and where those names are used: a change in a table shows where the table is read."""

from __future__ import annotations

import ast
import re
from dataclasses import dataclass
from functools import cache

from ..places import CORE_TESTS, ROOT

# What runs when the core is imported stands under this name in the record of who runs what.
IMPORTING = "import"


@dataclass(frozen=True)
class Statement:
    """A statement's lines, of a compound one its head; the names that it makes, and whether it stands in a function."""

    path: str
    lines: range
    makes: tuple[str, ...]
    in_function: bool


@cache
def statements(path: str, source: str) -> tuple[Statement, ...]:
    """Every statement and except clause, shortest first, so that the first around a line is the innermost."""
    found: list[Statement] = []

    def visit(node: ast.AST, within: tuple[str, ...], in_function: bool) -> None:
        for child in ast.iter_child_nodes(node):
            made, deeper = within, in_function
            if isinstance(child, (ast.stmt, ast.ExceptHandler)):
                body = getattr(child, "body", None)
                last = max(child.lineno, body[0].lineno - 1) if isinstance(body, list) else child.end_lineno or child.lineno
                named = [part.id for part in ast.walk(child) if isinstance(part, ast.Name) and isinstance(part.ctx, ast.Store)]
                own = (child.name,) if isinstance(child, (ast.FunctionDef, ast.ClassDef)) else () if body else tuple(named)
                found.append(Statement(path, range(child.lineno, last + 1), (*within, *own), in_function))
                made = (*within, child.name) if isinstance(child, ast.ClassDef) else within
                deeper = in_function or isinstance(child, ast.FunctionDef)
            visit(child, made, deeper)

    visit(ast.parse(source), (), False)
    return tuple(sorted(found, key=lambda one: len(one.lines)))


def statement_at(path: str, line: int) -> Statement | None:
    """The innermost statement around a line; None for a line of words or none at all."""
    return next((one for one in statements(path, sources()[path]) if line in one.lines), None)


@cache
def sources() -> dict[str, str]:
    """The core and its tests by path, read once: a long run sees one state of them."""
    files = [path for folder in (ROOT / "calc", *CORE_TESTS) for path in folder.rglob("*.py")]
    return {file.relative_to(ROOT).as_posix(): file.read_text() for file in files}


def users(statement: Statement) -> set[Statement]:
    """Where the names that a statement makes are used, and the names made there, and so on; in functions it ends."""
    found: set[Statement] = set()
    asked: set[str] = set()
    waiting = set(statement.makes)
    while waiting:
        asked |= waiting
        fresh = mentions(tuple(sorted(waiting))) - found - {statement}
        found |= fresh
        waiting = {name for one in fresh if not one.in_function and one.path.startswith("calc/") for name in one.makes} - asked
    return found


@cache
def mentions(names: tuple[str, ...]) -> frozenset[Statement]:
    word = re.compile(rf"\b(?:{'|'.join(map(re.escape, names))})\b")
    found: set[Statement] = set()
    for path, source in sources().items():
        for number, line in enumerate(source.split("\n"), 1):
            named = word.search(line) and not line.lstrip().startswith(("from ", "import ", "#"))
            if named and (one := statement_at(path, number)):
                found.add(one)
    return frozenset(found)
