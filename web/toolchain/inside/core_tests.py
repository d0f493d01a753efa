"""Inside Pyodide: the core's tests with the page's own Python and numpy.

Argument: JSON of {root: the repository, folders: to import from, words: for pytest}.
"""

import json
import os
import sys
from pathlib import Path

told = json.loads(sys.argv[1])
# The desk's environment comes last: only its pure packages (pytest and the like) can be imported here.
site = next((Path(told["root"]) / ".build" / "venv").glob("[lL]ib/**/site-packages"))
sys.path[:0] = told["folders"]
sys.path.append(str(site))
# pytest would look up entry points of every desk package, and the clock-based ones cannot work here.
os.environ["PYTEST_DISABLE_PLUGIN_AUTOLOAD"] = "1"
os.chdir(told["root"])

import pytest

code = pytest.main(["-q", "-p", "no:cacheprovider", "-p", "no:faulthandler", *told["words"]])
if code:
    raise RuntimeError(f"pytest ended with {code!r}")
