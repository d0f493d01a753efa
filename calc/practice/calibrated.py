"""Typical values that agree with each other under the model, by kind of riding, in the unit of their row.

Written by `python -m calc.practice.calibrate --write`. Do not edit.
"""

from __future__ import annotations

from collections.abc import Mapping

TYPICAL: Mapping[str, Mapping[str, float]] = {
    "motocross": {
        "shock rate": 50, "fork rate": 4.6, "travel rear": 310, "travel front": 305, "rake": 27, "standard rider": 87,
        "bike mass": 109, "bike front share": 49, "rider front share standing": 42.5, "leverage": 2.6, "leverage fall": 23,
        "preload shock": 7, "preload fork": 3, "gap": 115, "unsprung rear": 18.6, "unsprung front": 15,
        "rider sag front": 20, "free sag front": 10, "ride frequency front": 2.15, "end multiple front": 8.4,
        "rider sag rear": 32.5, "free sag rear": 9.5, "ride frequency rear": 1.5, "end multiple rear": 3.3,
    },
    "enduro": {
        "shock rate": 46, "fork rate": 4.2, "travel rear": 305, "travel front": 300, "rake": 26.5, "standard rider": 86,
        "bike mass": 113, "bike front share": 48, "rider front share standing": 42, "leverage": 2.55, "leverage fall": 22,
        "preload shock": 8, "preload fork": 4, "gap": 120, "unsprung rear": 20.6, "unsprung front": 16.7,
        "rider sag front": 21.5, "free sag front": 10.5, "ride frequency front": 2.1, "end multiple front": 7.7,
        "rider sag rear": 34, "free sag rear": 10, "ride frequency rear": 1.45, "end multiple rear": 3.1,
    },
    "dual-sport": {
        "shock rate": 68, "fork rate": 5, "travel rear": 255, "travel front": 255, "rake": 27, "standard rider": 89,
        "bike mass": 145, "bike front share": 48.5, "rider front share sitting": 34.5, "leverage": 2.55,
        "leverage fall": 16, "preload shock": 9, "preload fork": 8, "gap": 135, "unsprung rear": 21.7,
        "unsprung front": 18.5, "rider sag front": 22.5, "free sag front": 13, "ride frequency front": 2.15,
        "end multiple front": 6.7, "rider sag rear": 32, "free sag rear": 10, "ride frequency rear": 1.55,
        "end multiple rear": 3,
    },
    "adventure": {
        "shock rate": 94, "fork rate": 6.8, "travel rear": 215, "travel front": 215, "rake": 26.5, "standard rider": 91,
        "bike mass": 238, "bike front share": 48.5, "rider front share sitting": 37, "leverage": 2.4, "leverage fall": 7,
        "preload shock": 11, "preload fork": 19, "gap": 130, "unsprung rear": 25, "unsprung front": 21.6,
        "rider sag front": 26.5, "free sag front": 17.5, "ride frequency front": 2, "end multiple front": 4.4,
        "rider sag rear": 30, "free sag rear": 14, "ride frequency rear": 1.65, "end multiple rear": 2.7,
    },
    "two-up": {
        "shock rate": 134, "fork rate": 7, "travel rear": 215, "travel front": 215, "rake": 26.5, "standard rider": 91,
        "passenger": 67, "luggage": 33, "bike mass": 238, "bike front share": 48.5, "passenger front share": 9,
        "luggage front share": 6, "rider front share sitting": 37, "leverage": 2.4, "leverage fall": 7, "preload shock": 16,
        "preload fork": 21, "gap": 125, "unsprung rear": 25, "unsprung front": 21.6, "rider sag front": 27,
        "free sag front": 16, "ride frequency front": 1.95, "end multiple front": 4.3, "rider sag rear": 30.5,
        "free sag rear": 0.5, "ride frequency rear": 1.55, "end multiple rear": 2.6,
    },
    "road": {
        "shock rate": 90, "fork rate": 8.8, "travel rear": 130, "travel front": 125, "rake": 24.5, "standard rider": 87,
        "bike mass": 191, "bike front share": 50, "rider front share sitting": 40.5, "leverage": 2.15, "leverage fall": 6,
        "preload shock": 11, "preload fork": 16, "gap": 130, "unsprung rear": 22.6, "unsprung front": 16.9,
        "rider sag front": 30.5, "free sag front": 17.5, "ride frequency front": 2.35, "end multiple front": 3.1,
        "rider sag rear": 27.5, "free sag rear": 7.5, "ride frequency rear": 2, "end multiple rear": 2.6,
    },
    "supermoto": {
        "shock rate": 56, "fork rate": 5, "travel rear": 280, "travel front": 270, "rake": 25.5, "standard rider": 84,
        "bike mass": 117, "bike front share": 49, "rider front share sitting": 37, "leverage": 2.5, "leverage fall": 21,
        "preload shock": 8, "preload fork": 5, "gap": 125, "unsprung rear": 20.2, "unsprung front": 15.5,
        "rider sag front": 19.5, "free sag front": 10.5, "ride frequency front": 2.25, "end multiple front": 7.4,
        "rider sag rear": 30, "free sag rear": 7.5, "ride frequency rear": 1.55, "end multiple rear": 3.4,
    },
    "track": {
        "shock rate": 95, "fork rate": 10.2, "travel rear": 125, "travel front": 120, "rake": 23.5, "standard rider": 81,
        "bike mass": 171, "bike front share": 52, "rider front share sitting": 43, "leverage": 2.05, "leverage fall": 6,
        "preload shock": 8, "preload fork": 12, "gap": 115, "unsprung rear": 19.4, "unsprung front": 14.9,
        "rider sag front": 27.5, "free sag front": 16, "ride frequency front": 2.55, "end multiple front": 3.5,
        "rider sag rear": 22, "free sag rear": 6, "ride frequency rear": 2.3, "end multiple rear": 3.2,
    },
    "trials": {
        "shock rate": 62, "fork rate": 4, "travel rear": 170, "travel front": 170, "rake": 23, "standard rider": 75,
        "bike mass": 71, "bike front share": 48.5, "rider front share standing": 49, "leverage": 2.7, "leverage fall": 26,
        "preload shock": 6, "preload fork": 6, "gap": 150, "unsprung rear": 11.4, "unsprung front": 10.4,
        "rider sag front": 31, "free sag front": 11, "ride frequency front": 2.3, "end multiple front": 5,
        "rider sag rear": 34, "free sag rear": 6, "ride frequency rear": 1.9, "end multiple rear": 3.1,
    },
    "youth": {
        "shock rate": 40, "fork rate": 3.2, "travel rear": 265, "travel front": 245, "rake": 26, "standard rider": 57,
        "bike mass": 71, "bike front share": 48, "rider front share standing": 42.5, "leverage": 2.6, "leverage fall": 24,
        "preload shock": 5, "preload fork": 4, "gap": 120, "unsprung rear": 10.5, "unsprung front": 8.4,
        "rider sag front": 23, "free sag front": 11.5, "ride frequency front": 2.25, "end multiple front": 8.9,
        "rider sag rear": 32, "free sag rear": 10, "ride frequency rear": 1.6, "end multiple rear": 3.4,
    },
}  # fmt: skip
