"""The bench's figures as tables."""

from __future__ import annotations

from typing import Any

# What is hoped for in absolute terms on a 2-core machine [ms]; told beside what was found, judged only by ratio.
HOPED = {("1x", "first"): 1400, ("4x", "first"): 3500, ("1x", "second"): 1000, ("4x", "second"): 2800}
BANDS_HOPED = 250


def tell(result: dict[str, Any]) -> None:
    tell_sizes(result)
    tell_start(result)
    print("\nFrom an edit to what is on the screen, less the wait for the hand to rest [ms]")
    for speed, rows in result["edit"].items():
        for what, row in rows.items():
            print(f"  {speed}: {what:17} median {row['median']:.0f}, p95 {row['p95']:.0f}")
    tell_core(**result["core"])
    print("\nJudged by ratio")
    for row in result["ratios"]:
        print(f"  {row['ratio']:7.4f} of {row['limit']:<6} {verdict(row['ratio'], row['limit'])}  {row['name']}")


def tell_core(browser: dict[str, float], cpython: dict[str, float]) -> None:
    print(f"\nOne question to the core, both ends, medians [ms]{'browser':>25} {'CPython':>9}")
    for name, spent in browser.items():
        hope = f"  (hoped for: {BANDS_HOPED} or less)" if name == "bands" else ""
        print(f"  {name:64} {spent:9.1f} {cpython[name]:9.1f}{hope}")


def verdict(found: float, limit: float) -> str:
    return "kept  " if found <= limit else "MISSED"


def tell_sizes(result: dict[str, Any]) -> None:
    print(f"\n{'bytes':>12} {'gzip 9':>12} {'brotli 11':>12}  file")
    for name, row in sorted(result["files"].items(), key=lambda pair: -pair[1]["raw"]):
        print(f"{row['raw']:12,} {row['gzip']:12,} {row['br']:12,}  {name}")
    print("\nBudgets [bytes]")
    for row in result["budgets"]:
        print(f"{row['bytes']:12,} of {row['limit']:,} {verdict(row['bytes'], row['limit'])} {row['name']}")


def tell_start(result: dict[str, Any]) -> None:
    print("\nStart-up, medians [ms from the start of navigation]")
    print(f"{'':24} {'first screen':>13} {'saved answer':>13} {'computed':>13}")
    for speed, pages in result["start"].items():
        for name, rows in pages.items():
            for visit, row in rows.items():
                cells = " ".join(f"{'-' if row[mark] is None else format(row[mark], '.0f'):>13}" for mark in row)
                hope = f"  (hoped for: {HOPED[speed, visit]})" if name == "page" else ""
                print(f"{speed} {name:6} {visit:14} {cells}{hope}")
    if "not_measured" in result:
        print(result["not_measured"])
