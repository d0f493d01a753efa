"""The error for a bike, fork or shock that cannot be: it names the cause and the way out."""

from __future__ import annotations


class Impossible(ValueError):
    """A physical impossibility.

    Parameters: code, a short name; message, the cause in words with its numbers and units; way_out, what to change;
    field, the path of the field to look at first, where one can be named.
    """

    def __init__(self, code: str, message: str, way_out: str, field: str | None = None) -> None:
        super().__init__(f"{message} {way_out}")
        self.code = code
        self.message = message
        self.way_out = way_out
        self.field = field
