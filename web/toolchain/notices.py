"""notices.txt: whose work ships with the page, and under which terms, in the words of each part's own licence file.

A part without such a file stops the build. Pyodide's package is the one that carries none: its licence, Python's and those of
what is linked with them stand in licences/.
"""

from __future__ import annotations

import json
import re
from collections.abc import Iterable
from importlib import metadata
from pathlib import Path
from typing import NamedTuple

from . import pins, sources
from .node import shipped_packages
from .places import LICENCES, MODULES, ROOT, STAGE, TOLD, stop, version

NOTICES = STAGE / "notices.txt"
LICENCE = re.compile(r"(licen[cs]e|copying|notice|authors)[^/]*$", re.IGNORECASE)
RULE = "=" * 80
HEAD = """Stanchion {version} is free software, and so is all that it is made of. Who made which part, and under which terms:
"""


class Part(NamedTuple):
    name: str
    version: str
    texts: tuple[str, ...]


def part(name: str, version: str, files: Iterable[Path]) -> Part:
    texts = tuple(path.read_text(encoding="utf-8").strip() for path in sorted(files))
    return Part(name, version, texts) if all(texts) and texts else stop(f"{name} {version} ships, and has no licence file")


def page_part(name: str) -> Part:
    """A package of the page, from its own folder."""
    folder = MODULES / name
    told = json.loads((folder / "package.json").read_text(encoding="utf-8"))
    return part(name, told["version"], [path for path in folder.iterdir() if LICENCE.match(path.name)])


def python_part(name: str) -> Part:
    """A package of the core, from what its wheel brought."""
    files = [Path(str(file.locate())) for file in metadata.files(name) or [] if ".dist-info" in str(file)]
    return part(name, metadata.version(name), [path for path in files if LICENCE.match(path.name)])


def numpy_part() -> Part:
    folder = next(sources.NUMPY.glob("numpy-*.dist-info"))
    return part("numpy", folder.name.split("-")[1].removesuffix(".dist"),
                [path for path in (folder / "licenses").rglob("*") if path.is_file()])  # fmt: skip


def runtime_parts() -> list[Part]:
    names = {"pyodide": "Pyodide", "cpython": "Python, in Pyodide", "linked": "what is linked with Python in Pyodide"}
    return [part(title, pins.version(), [LICENCES / f"{name}.txt"]) for name, title in names.items()]


def parts() -> list[Part]:
    return [
        part("Stanchion", version(), [ROOT / "LICENSE"]),
        *map(page_part, shipped_packages()),
        *map(python_part, sources.PURE_PACKAGES),
        numpy_part(),
        *runtime_parts(),
    ]


def text(parts: list[Part]) -> str:
    """Each licence once, under the names of all that it is of."""
    by_text: dict[tuple[str, ...], list[str]] = {}
    for one in parts:
        by_text.setdefault(one.texts, []).append(f"{one.name} {one.version}")
    sections = ["\n".join([RULE, *names, RULE, "", "\n\n".join(texts)]) for texts, names in by_text.items()]
    return "\n\n".join([HEAD.format(version=version()), *sections]) + "\n"


def prepare() -> None:
    """Written anew at every build: it takes no time."""
    STAGE.mkdir(parents=True, exist_ok=True)
    NOTICES.write_text(text(parts()), encoding="utf-8")


def check_bundled() -> None:
    """Whatever vite says that it bundled stands in the notices."""
    named = set(shipped_packages())
    bundled = {row["name"] for row in json.loads((TOLD / "license.json").read_text(encoding="utf-8"))}
    if not bundled <= named:
        stop(f"bundled, but no dependency in web/package.json: {', '.join(sorted(bundled - named))}")
