"""What is mutated and what is left out: the whole rule, in this one place.

Mutated: numbers, signs, arithmetic, comparisons, conditions, loops, what is caught; in functions, tables and defaults alike.
Left out:
- strings (sentences, help texts, names of fields): no operator here touches them; words are tested on the page;
- annotations and the shape of a signature (`*`, `/`): they compute nothing;
- decorators: they say how often a thing is worked out, or that it cannot be written to, not what it is;
- the command line's last lines, which only call `main`;
- tables of plain data: the trade's ranges, the declarations of fields, the demo's entries. Nobody computes them, and a test
  could only be their copy; what must hold among them is tested (order, units, which use has which row);
- what does not compile.
Operators that turn arithmetic into bits (`a << b` for lengths) are not used: each dies of a TypeError and flatters the score.
"""

from __future__ import annotations

import ast
from collections.abc import Iterator

TABLES = ("calc/practice/", "calc/job/fields/", "calc/demo/")

Span = tuple[tuple[int, int], tuple[int, int]]

SWAPS = {
    "Binary": ["Add_Sub", "Sub_Add", "Mul_Div", "Div_Mul", "Pow_Mul", "FloorDiv_Div", "Mod_FloorDiv",
               "BitOr_BitAnd", "BitAnd_BitOr"],
    # One step to the edge, and the other way about.
    "Comparison": ["Lt_LtE", "LtE_Lt", "Gt_GtE", "GtE_Gt", "Lt_GtE", "LtE_Gt", "Gt_LtE", "GtE_Lt",
                   "Eq_NotEq", "NotEq_Eq", "Is_IsNot", "IsNot_Is"],
    "Unary": ["Delete_USub", "Delete_Not", "Delete_Invert"],
}  # fmt: skip
OPERATORS = [
    "NumberReplacer", "ReplaceTrueWithFalse", "ReplaceFalseWithTrue", "ReplaceAndWithOr", "ReplaceOrWithAnd", "AddNot",
    "ReplaceBreakWithContinue", "ReplaceContinueWithBreak", "ZeroIterationForLoop", "ExceptionReplacer",
    *(f"Replace{kind}Operator_{swap}" for kind, swaps in SWAPS.items() for swap in swaps),
]  # fmt: skip


def span(node: ast.AST) -> Span:
    """Of a node with a place in the text."""
    start = ast_place(node, "lineno", "col_offset")
    return start, ast_place(node, "end_lineno", "end_col_offset")


def ast_place(node: ast.AST, line: str, column: str) -> tuple[int, int]:
    return getattr(node, line), getattr(node, column)


def inside(place: tuple[int, int], around: Span) -> bool:
    return around[0] <= place < around[1]


def left_out(path: str, source: str) -> list[Span]:
    """The parts of a module that are not mutated, as (line, column in bytes) from and to."""
    tree = ast.parse(source)
    found = [span(node) for node in tables(tree)] if path.startswith(TABLES) else []
    for node in ast.walk(tree):
        found += [span(part) for part in unmeant(node)]
        if isinstance(node, ast.FunctionDef):
            found += between(node)
    return found


def tables(tree: ast.Module) -> Iterator[ast.AST]:
    """What is assigned in the module, and what makes a field there: by itself, or through a function of the module."""
    yield from (node for node in tree.body if isinstance(node, (ast.Assign, ast.AnnAssign)))
    makers = {"Field", *(node.name for node in ast.walk(tree) if isinstance(node, ast.FunctionDef))}
    yield from (node for node in ast.walk(tree) if isinstance(node, ast.Call) and ast.unparse(node.func) in makers)


def unmeant(node: ast.AST) -> Iterator[ast.AST]:
    """The annotations and decorators of a node, and the node itself where it is the call of `main`."""
    for name in ("annotation", "returns"):
        if getattr(node, name, None) is not None:
            yield getattr(node, name)
    yield from getattr(node, "decorator_list", [])
    if isinstance(node, ast.If) and ast.unparse(node.test) == "__name__ == '__main__'":
        yield node


def between(function: ast.FunctionDef) -> Iterator[Span]:
    """A signature, less its defaults."""
    at = function.lineno, function.col_offset
    defaults = [node for node in (*function.args.defaults, *function.args.kw_defaults) if node is not None]
    for start, end in sorted(span(node) for node in defaults):
        yield at, start
        at = end
    yield at, (function.body[0].lineno, function.body[0].col_offset)
