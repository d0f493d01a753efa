"""The score by module, and the survivors as JSON."""

from __future__ import annotations

import json
from collections import defaultdict
from dataclasses import asdict, dataclass

from ..places import MUTATION, ROOT, stop
from .choose import Mutant
from .trial import LATE, PASSED

OUTCOMES, SURVIVORS = MUTATION / "outcomes.json", MUTATION / "survivors.json"
UNREACHED = "no test runs it"
EQUIVALENT = ROOT / "tests" / "mutants_equivalent.json"


@dataclass(frozen=True)
class Outcome:
    """A mutant and how its trial ended; `change` is the line before and after."""

    mutant: Mutant
    change: tuple[str, str]
    end: str

    @property
    def survived(self) -> bool:
        return self.end in (PASSED, UNREACHED)


def changed_line(path: str, text: str) -> tuple[str, str]:
    """The first line in which two texts differ, before and after."""
    pairs = zip((ROOT / path).read_text().split("\n"), text.split("\n"), strict=False)
    return next(((before.strip(), after.strip()) for before, after in pairs if before != after), ("", ""))


def equivalents() -> dict[tuple[str, str, str], str]:
    """Changes that alter no answer, each with the reason: (path, line before, line after) to reason."""
    return {(one["path"], one["before"], one["after"]): one["reason"] for one in json.loads(EQUIVALENT.read_text())}


def package(path: str) -> str:
    parts = path.split("/")
    return "/".join(parts[:2]) if len(parts) > 2 else "calc"


def table(outcomes: list[Outcome], by: dict[str, list[Outcome]]) -> list[str]:
    rows = [f"{'':28}{'tried':>7}{'killed':>8}{'late':>6}{'left':>6}{'score':>8}"]
    for name, some in [*sorted(by.items()), ("all", outcomes)]:
        killed, late = sum(not one.survived for one in some), sum(one.end == LATE for one in some)
        rows.append(f"{name:28}{len(some):7}{killed:8}{late:6}{len(some) - killed:6}{killed / len(some):8.1%}")
    return rows


def judged(outcomes: list[Outcome]) -> list[Outcome]:
    """All but the survivors that are known to be equivalent: those stand in no score."""
    known = equivalents()
    return [one for one in outcomes if not (one.survived and (one.mutant.path, *one.change) in known)]


def keep(outcomes: list[Outcome], about: str) -> None:
    """All of a run, for a second look at it; and what survived, to read."""
    OUTCOMES.write_text(json.dumps({"about": about, "outcomes": [asdict(one) for one in outcomes]}, indent=1))
    left = [asdict(one) for one in judged(outcomes) if one.survived]
    SURVIVORS.write_text(json.dumps({"about": about, "tried": len(judged(outcomes)), "survivors": left}, indent=1))


def kept() -> tuple[list[Outcome], str]:
    """The last run, and what it was about."""
    if not OUTCOMES.exists():
        stop("there is no last run yet")
    last = json.loads(OUTCOMES.read_text())
    return [Outcome(Mutant(**one["mutant"]), tuple(one["change"]), one["end"]) for one in last["outcomes"]], last["about"]


def report(outcomes: list[Outcome], about: str) -> str:
    """What is printed; the survivors are written beside it."""
    keep(outcomes, about)
    counted = judged(outcomes)
    by_package, by_module = defaultdict(list), defaultdict(list)
    for one in counted:
        by_package[package(one.mutant.path)].append(one)
        by_module[one.mutant.path].append(one)
    unreached = sum(one.end == UNREACHED for one in counted)
    return "\n".join(
        [
            *table(counted, by_module),
            "",
            *table(counted, by_package),
            "",
            f"{about}; known equivalents, not counted: {len(outcomes) - len(counted)}; left because no test runs them: {unreached}",
            f"survivors: {SURVIVORS.relative_to(ROOT)}",
        ]
    )
