"""Inside Pyodide: the core's tests with the page's own Python and numpy. Arguments: the folders to import from.

tests/core/desk_only.txt names the files that need what only a desk has, each with its reason.
"""

import sys
from pathlib import Path

folders = sys.argv[1:]
root = Path(folders[0])
# The desk's environment comes last: only its pure packages (pytest and the like) can be imported here.
site = next((root / ".build" / "venv").glob("[lL]ib/**/site-packages"))
sys.path[:0] = folders
sys.path.append(str(site))
# pytest would look up entry points of every desk package, and the clock-based ones cannot work here.
import os

os.environ["PYTEST_DISABLE_PLUGIN_AUTOLOAD"] = "1"
os.chdir(root)

import pytest

desk_only = []
for line in (root / "tests/core/desk_only.txt").read_text().splitlines():
    name, _, reason = line.partition("#")
    if not name.strip():
        continue
    if not reason.strip() or not (root / "tests/core" / name.strip()).is_file():
        raise SystemExit(f"tests/core/desk_only.txt: no such file, or no reason: {line}")
    desk_only.append(f"--ignore=tests/core/{name.strip()}")
code = pytest.main(["tests/core", "-q", "-p", "no:cacheprovider", "-p", "no:faulthandler", *desk_only])
if code:
    raise RuntimeError(f"pytest ended with {code!r}")
