"""What people, pets and attackers put into a field that takes one number and one unit. None of it may be read."""

from __future__ import annotations

EMPTY = ["", " ", "\t", "\u00a0", "\u2009 "]
NOT_FINITE = ["nan", "NaN", "NAN", "inf", "-inf", "Infinity", "1e400", "-1e400", "1e9999", "9e999"]
SUMS = ["9**9**9", "9^9", "2+2", "2*3", "1/3", "(4.4)", "4-6", "4+-1", "4 ± 1", "4 to 6", "4=4", "sqrt(4)"]
SEPARATORS = [
    "1,250",
    "-1,250",
    "12,345",
    "999,999",
    "4.4.4",
    "4,4,4",
    "4.4,4",
    "1.250,5",
    "1,250.5",
    "1 250",
    "1'250",
    "1_000",
    "4;;4 x",
]
SIGNS = ["--4", "+-4", "4-", "-", "+", ".", ",", "..4", "4..4", "- 4", "~4", "<5", ">5", "≈4"]
EXPONENTS = ["e5", "4e", "4e+", "e", "4ee4", "4e4e4", "1e12345"]
OTHER_DIGITS = ["0x10", "0b11", "0o7", "１２", "٤", "四", "½", "4½", "∞", "π", "IV", "four"]
HOSTILE = ["__import__('os')", "<script>alert(1)</script>", "'; DROP TABLE jobs;--", "${7*7}", "{{7*7}}", "%s%n%x", "../../etc",
           "\x00", "4\x00", "4\u200b", "\u202e44", "4\ud800", "😀", "4😀", "a" * 41, "9" * 41, "9" * 5000, "4" + " " * 60 + "4",
           "null", "None", "true", "undefined", "[4]", "{4}", "\\4", "4\n\n4"]  # fmt: skip
UNKNOWN = ["4 furlongs", "4 bananas", "4 N/mm N/mm", "4 mm mm", "4 q", "4%%", "about 4", "N/mm 4", "4 N//mm", "4 N·mm²"]
ALL = [*EMPTY, *NOT_FINITE, *SUMS, *SEPARATORS, *SIGNS, *EXPONENTS, *OTHER_DIGITS, *HOSTILE, *UNKNOWN]
