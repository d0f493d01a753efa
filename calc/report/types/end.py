"""The report of one end."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Literal

from calc.job import Problem
from calc.report.types.braking import Braking
from calc.report.types.condition import Condition
from calc.report.types.figure import Quantity, Windows
from calc.report.types.motion import MotionReport
from calc.report.types.section import Section
from calc.report.types.setup import Candidate, Curve, FoundSetupReport, SetupReport
from calc.report.types.sure import HowSure, NextReading, RiderSpan
from calc.report.types.work import GapStepReport


@dataclass(frozen=True, slots=True)
class FiguresReport:
    """Of the setup that an end's report chooses, ahead of that report: its figures, the travel [mm, where sag is read]."""

    setup: SetupReport
    travel: float
    windows: Windows


@dataclass(frozen=True, slots=True)
class AsFound:
    """The setup as found, or why it has no figures."""

    problem: Problem | None
    setup: FoundSetupReport | None


@dataclass(frozen=True, slots=True)
class Attempt:
    """What the user tries, or why it cannot be; `section` at the front, of a leg that locks up to there."""

    problem: Problem | None
    setup: SetupReport | None
    curve: Curve | None
    section: Section | None
    gap_step: GapStepReport | None


@dataclass(frozen=True, slots=True)
class Built(Attempt):
    """What was built, leg by leg; under the job's other conditions once these are worked out."""

    conditions: tuple[Condition, ...] = ()


@dataclass(frozen=True, slots=True)
class EndTarget(Quantity):
    """What is wanted of the end of the travel, and in which measure it is asked for."""

    kind: str


@dataclass(frozen=True, slots=True)
class Targets:
    """What is aimed at; `free_sag` where the user wishes one, `end` at the front."""

    rider_sag: Quantity
    free_sag: Quantity | None
    end: EndTarget | None


@dataclass(frozen=True, slots=True)
class YardstickReport:
    """The ride frequency that the choice comes near to, and where it is from."""

    frequency: Quantity
    source: str
    words: str


@dataclass(frozen=True, slots=True)
class EndLoads:
    """What the end carries, bike alone and with the rider."""

    alone: Quantity
    aboard: Quantity
    sprung_mass: Quantity


@dataclass(frozen=True, slots=True)
class Moved:
    """What the recommended setup raises the bike by against as found, rider aboard: at the wheel, and along the leg or shock."""

    height: Quantity
    along: Quantity


@dataclass(frozen=True, slots=True)
class Seat:
    """What to do to spacer or collar: `move` where the preload it starts from was read, `turns` where the pitch is known too."""

    move: Quantity | None
    turns: Quantity | None
    words: str


@dataclass(frozen=True, slots=True, kw_only=True)
class SizedEnd:
    """What every sized end holds, whether or not a spring meets the targets.

    `curve` is of the chosen setup, as found where nothing was chosen. `sure`, `measure_next`, `conditions` and `holds_for`
    come with the bands. `section` and `gap_step`, of what `curve` is of, and `braking` are the front's, `motion` the rear's.
    """

    problems: tuple[Problem, ...]
    candidates: tuple[Candidate, ...]
    standard: SetupReport
    as_found: AsFound
    windows: Windows
    targets: Targets
    yardstick: YardstickReport
    load: EndLoads
    tried: Attempt | None
    built: Built | None
    curve: Curve | None
    curve_found: Curve | None
    curve_standard: Curve
    section: Section | None
    gap_step: GapStepReport | None
    braking: Braking | None
    motion: MotionReport | None
    sure: HowSure | None = None
    measure_next: tuple[NextReading, ...] = ()
    conditions: tuple[Condition, ...] = ()
    holds_for: RiderSpan | None = None


@dataclass(frozen=True, slots=True, kw_only=True)
class EndOk(SizedEnd):
    """An end with an answer.

    `verdict`: what is in stays, another is fitted, nothing on offer fits and the nearest is told, or what is known cannot tell
    springs apart: then what is in stays for now, and `chosen` is that. `leave`: what is in stays and was read, or is a spring.
    `doubt`: why no spring is ordered by it yet; the answer ends with that. `also`: what is told in the unit that was typed.
    """

    state: Literal["ok"] = "ok"
    verdict: Literal["keep", "fit", "nearest", "open"]
    chosen: Candidate
    moved: Moved | None
    leave: bool
    answer: str
    why: tuple[str, ...]
    seat: Seat
    doubt: str = ""
    also: str = ""


@dataclass(frozen=True, slots=True, kw_only=True)
class EndNone(SizedEnd):
    """An end at which nothing on offer can be built."""

    state: Literal["none"] = "none"


@dataclass(frozen=True, slots=True)
class EndRefused:
    """An end with an entry that is refused, or of a bike that is impossible."""

    state: Literal["refused"]
    problems: tuple[Problem, ...]


EndReport = EndOk | EndNone | EndRefused
