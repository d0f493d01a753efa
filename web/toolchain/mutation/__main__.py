"""The run itself, in a process of its own: choose, try, tell."""

from __future__ import annotations

import argparse
import time
from collections import Counter
from collections.abc import Callable, Iterator

from ..places import CORE_TESTS, ROOT, Stop, say, stop
from ..stamp import Stamp, key_of
from . import add_arguments, choose, score, trial
from .select import Reach, recorded


def prove_trials(reach: Reach) -> None:
    """A trial of the unchanged core must pass, in the order that trials use: else every change would seem noticed."""
    stamp = Stamp("mutants-unchanged")
    key = key_of(ROOT / "calc", *CORE_TESTS, ROOT / "web" / "toolchain" / "mutation")
    if stamp.fresh(key):
        return
    say("trying the core unchanged")
    path = ROOT / "calc" / "impossible.py"
    ends: list[str] = []
    tests = dict(sorted(reach.seconds.items(), key=lambda one: one[1]))
    trial.try_all(iter([(trial.Task("calc.impossible", path, path.read_text(), tests), ends.append)]), 1)
    if ends != [trial.PASSED]:
        stop(f"the unchanged core fails in a trial: {ends[0]}")
    stamp.put(key, [])


Told = tuple[trial.Task, Callable[[str], None]]


def tasks(mutants: list[choose.Mutant], reach: Reach, outcomes: list[score.Outcome], in_full: bool) -> Iterator[Told]:
    noticed: Counter[str] = Counter()
    for mutant in mutants:
        text = choose.changed(mutant)
        if text is None:
            continue
        path = ROOT / mutant.path
        change = score.changed_line(mutant.path, text)

        def tell(end: str, mutant: choose.Mutant = mutant, change: tuple[str, str] = change) -> None:
            outcomes.append(score.Outcome(mutant, change, end))
            noticed[end] += 1
            if len(outcomes) % 10 == 0:
                say(f"{len(outcomes)} tried, {sum(one.survived for one in outcomes)} survived")
                score.keep(outcomes, "a run that was not finished")

        tests = reach.tests(mutant.path, mutant.line, in_full)
        if tests:
            # Tests that notice much in little time come first.
            order = sorted(tests, key=lambda test: -noticed[test] / (0.1 + tests[test]))
            yield trial.Task(mutant.module, path, text, {test: tests[test] for test in order}, in_full), tell
        else:
            tell(score.UNREACHED)


def main() -> int:
    parser = argparse.ArgumentParser()
    add_arguments(parser)
    chosen = parser.parse_args()
    paths = choose.modules(chosen.only)
    if not paths:
        stop(f"no module of the core is under {', '.join(chosen.only)}")
    started = time.monotonic()
    by_module = [choose.mutants_of(path) for path in paths]
    total = sum(len(some) for some in by_module)
    outcomes: list[score.Outcome] = []
    if chosen.again:
        last, about = score.kept()
        outcomes = [one for one in last if not one.survived]
        mutants = [one.mutant for one in score.judged(last) if one.survived]
        about = f"{about}; its survivors by every test in full"
    else:
        mutants = choose.sample(by_module, total if chosen.all else chosen.sample, chosen.seed)
        about = f"{len(mutants)} of {total} mutants, seed {chosen.seed}"
    reach = recorded()
    trial.warm()
    prove_trials(reach)
    say(f"{len(mutants)} of {total} mutants, {chosen.jobs} at a time")
    trial.try_all(tasks(mutants, reach, outcomes, chosen.again), chosen.jobs)
    say(f"{(time.monotonic() - started) / 60:.0f} min")
    print("\n" + score.report(outcomes, about))
    return 0


if __name__ == "__main__":
    try:
        raise SystemExit(main())
    except Stop as problem:
        print(problem, flush=True)
        raise SystemExit(1) from problem
