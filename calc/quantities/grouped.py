"""Numbers with marks between their thousands: what each can mean. None is read as it stands."""

from __future__ import annotations

import re

_GROUPED = re.compile(
    r"(?P<sign>[+-]?)(?P<first>[1-9][0-9]{0,2})(?P<groups>(?P<mark>[,.' ])[0-9]{3}(?:(?P=mark)[0-9]{3})*)"
    r"(?:(?P<point>[,.])(?P<part>[0-9]+))?(?![0-9.,])"
)


def meanings(text: str) -> tuple[str, ...]:
    """Say what a number with marks between its thousands can mean.

    Parameters: text, tidied, starting with the number; what follows it is kept.
    Returns: the text with the number written plainly, once for each meaning; none where it is not written in thousands.
    Raises: nothing.
    Formula: a single comma before three digits is a thousand or a decimal; a single point is a decimal; anything longer, or with
    another mark before its decimals, can only be thousands.
    Source: common practice, no source: the comma groups thousands in some places and marks decimals in others.
    Example:
        >>> meanings("1,250 g"), meanings("1,013,250 Pa"), meanings("1.250,5 N"), meanings("1.250 kg")
        (('1250 g', '1.250 g'), ('1013250 Pa',), ('1250.5 N',), ())
    """
    found = _GROUPED.match(text)
    if found is None or found["point"] == found["mark"]:
        return ()
    mark, rest = found["mark"], text[found.end() :]
    whole = found["sign"] + found["first"] + found["groups"].replace(mark, "")
    if found["point"]:
        return (f"{whole}.{found['part']}{rest}",)
    if found["groups"].count(mark) > 1 or mark in " '":
        return (whole + rest,)
    return (whole + rest, found[0].replace(",", ".") + rest) if mark == "," else ()
