"""Every mutant of the core, and a sample of them."""

from __future__ import annotations

import random
from dataclasses import dataclass

from ..places import ROOT
from . import rule


@dataclass(frozen=True)
class Mutant:
    """One change in one place: the operator's `occurrence`-th in the module, at a line and column."""

    path: str
    operator: str
    occurrence: int
    line: int
    column: int

    @property
    def module(self) -> str:
        name = self.path.removesuffix(".py").removesuffix("/__init__")
        return name.replace("/", ".")


def modules(only: list[str]) -> list[str]:
    """The core's files, or those under the paths given."""
    paths = [path.relative_to(ROOT).as_posix() for path in sorted((ROOT / "calc").rglob("*.py"))]
    wanted = [path.strip("/").removesuffix(".py") for path in only]
    return [path for path in paths if not wanted or any(f"{path.removesuffix('.py')}/".startswith(f"{one}/") for one in wanted)]


def mutants_of(path: str) -> list[Mutant]:
    from cosmic_ray.ast import ast_nodes, get_ast
    from cosmic_ray.plugins import get_operator

    source = (ROOT / path).read_text()
    lines, spans, nodes = source.split("\n"), rule.left_out(path, source), list(ast_nodes(get_ast(source)))
    found = []
    for name in rule.OPERATORS:
        operator = get_operator(f"core/{name}")()
        places = (start for node in nodes for start, _ in operator.mutation_positions(node))
        for occurrence, (line, column) in enumerate(places):
            # Python's own tree counts columns in bytes, parso in characters.
            place = line, len(lines[line - 1][:column].encode())
            if not any(rule.inside(place, span) for span in spans):
                found.append(Mutant(path, name, occurrence, line, column))
    return found


def changed(mutant: Mutant) -> str | None:
    """The module's text with the change in it, or None when that does not compile."""
    from cosmic_ray.mutating import mutate_code
    from cosmic_ray.plugins import get_operator

    text: str = mutate_code((ROOT / mutant.path).read_text(), get_operator(f"core/{mutant.operator}")(), mutant.occurrence)
    try:
        compile(text, mutant.path, "exec", dont_inherit=True)
    except SyntaxError:
        return None
    return text


def sample(by_module: list[list[Mutant]], size: int, seed: int) -> list[Mutant]:
    """So many of them, each module in proportion: shuffled within a module, taken at even steps along all modules.

    In random order, so that a run which is broken off has still drawn from everywhere.
    """
    dice = random.Random(seed)
    line = [mutant for some in by_module for mutant in dice.sample(some, len(some))]
    if size >= len(line):
        return line
    step = len(line) / size
    start = dice.random() * step
    return dice.sample([line[int(start + step * i)] for i in range(size)], size)
