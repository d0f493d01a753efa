"""The report as plain text for the command line."""

from __future__ import annotations

import textwrap

from calc.job.fields import FIELDS
from calc.practice import Axle
from calc.report.data import Data, number_text, plus_minus_text, rate_text, told
from calc.report.words import named, rate_words, step_of, step_text

WIDTH = 100
_END_TITLES = {"front": "Front", "rear": "Rear"}


def report_text(report: Data) -> str:
    """The report in the order of the job: answer, why, others, as found, curve, readings, cautions."""
    header = report["header"]
    title = header["name"] or "A job with no name"
    lines = [f"{title}{' (demo, invented)' if header['invented'] else ''}", f"{report['use_label']}, sags {report['posture']}", ""]
    for end in ("front", "rear"):
        lines += [*_end_lines(end, report["ends"][end]), ""]
    if report["attitude"]:
        lines += [*_wrapped(report["attitude"]["words"]), ""]
    for note in report["notes"]:
        lines += [*_wrapped(f"Note: {note}"), ""]
    lines += _rests_on(report)
    if report["measure_first"]:
        lines += ["", "Measure first:", *(f"  {m['words']} {m['how']}" for m in report["measure_first"])]
    lines += ["", "Cautions:"]
    for caution in report["cautions"]:
        lines += _wrapped(f"{caution['title']} {caution['words']}", "  ")
    lines += ["", *_wrapped(report["left_out"])]
    return "\n".join(lines)


def _end_lines(axle: Axle, data: Data) -> list[str]:
    lines = [_END_TITLES[axle]]
    for problem in data["problems"]:
        lines += _wrapped(f"{problem['message']} {problem['limit']} {problem['way_out']}".replace("  ", " ").strip(), "  ")
    if data["state"] == "refused":
        return lines
    if data["state"] == "ok":
        lines += [
            f"  {data['answer']}",
            *(line for why in data["why"] for line in _wrapped(why, "  ")),
            f"  {data['seat']['words']}",
            *([f"  {data['holds_for']['words']}"] if data["holds_for"] else []),
        ]
    lines += ["", *_table(axle, data), ""]
    lines += [f"  {rate_text(c['rate']['value'])} is {rate_words(c)}" for c in data["candidates"] if c["pair"]]
    lines += [f"  {named(c)}: {v['words']}" for c in data["candidates"] for v in c["vetoes"]]
    return [*lines, *_curve(data), *_beside(data), *_elsewhere(data)]


def _table(axle: Axle, data: Data) -> list[str]:
    gap = "  gap mm" if axle == "front" else ""
    unit = "bar" if data["standard"]["pressure"] else "N/mm"
    head = f"  {'':20}{unit:>5}  preload mm{gap}  free sag mm  rider sag mm    Hz  axle kN  end/load  landing J"
    rows = [
        _row(c["relation"] if c["relation"] != "other" else ("as fitted" if c["fitted"] else ""), c) for c in data["candidates"]
    ]
    found, tried = data["as_found"]["setup"], data["tried"]
    rows += [_row("as found", found)] if found else [f"  as found: {data['as_found']['problem']['message']}"]
    rows.append(_row("standard, its rider", data["standard"]))
    if tried:
        rows.append(_row("tried", tried["setup"]) if tried["setup"] else f"  tried: {tried['problem']['message']}")
    return [head, *rows]


def _row(name: str, c: Data) -> str:
    gap = f"{_number(c['gap']):>8}" if "gap" in c else ""
    return (
        f"  {name:20}{step_text(c, step_of(c)):>5}{_number(c['preload']):>12}{gap}"
        f"{_number(c['free_sag']):>13}{_number(c['rider_sag']):>14}{_number(c['frequency']):>6}{_number(c['end_force']):>8}{_number(c['end_multiple']):>10}{_number(c['landing_energy']):>11}"
    )


def _beside(data: Data) -> list[str]:
    """Brake dive at the front; the shock's motion at the rear."""
    lines: list[str] = []
    if data["braking"]:
        lines += ["", *_wrapped(f"{data['braking']['words']} {data['braking'].get('left_out', '')}".strip(), "  ")]
    motion = data["motion"]
    if motion:
        lines += ["", *_wrapped(f"Shock's motion. {motion['words']}", "  "), "      mm  shock stroke mm  leverage wheel / shock"]
        lines += [f"  {_number(r['travel']):>6}{_number(r['stroke']):>17}{_number(r['leverage']):>24}" for r in motion["rows"]]
        lines += [
            f"  Shock {told(view['shock_length'])} long {view['at']}; from the swingarm pivot, forward and up, mm: "
            + "; ".join(f"{name} {number_text(x, 0)}, {number_text(z, 0)}" for name, (x, z) in view["points"].items())
            for view in motion["views"]
        ]
        lines += _wrapped(motion["left_out"], "  ")
    return lines


def _number(figure: Data) -> str:
    return number_text(figure["value"], figure["decimals"])


def _banded(figure: Data) -> str:
    return f"{_number(figure)} {plus_minus_text(figure)}".strip()


def _curve(data: Data) -> list[str]:
    curve = data["curve"]
    if curve is None:
        return []
    lines = ["", f"  {curve['axis']}, kN at the wheel, whole end", "      mm  springs   slow  working   fast   wheel rate N/mm"]
    for i in range(0, len(curve["stroke"]), max(len(curve["stroke"]) // 6, 1)):
        row = (curve[key][i] for key in ("springs", "slow", "working", "fast"))
        springs, slow, working, fast = row
        lines.append(
            f"  {curve['stroke'][i]:6.0f}  {springs:7.2f}{slow:7.2f}{working:9.2f}{fast:7.2f}{curve['wheel_rate'][i]:12.1f}"
        )
    return lines


def _elsewhere(data: Data) -> list[str]:
    rows = data["elsewhere"]
    if not rows:
        return []
    lines = ["", f"  {'as built, elsewhere':34}free sag mm  rider sag mm    end/load"]
    for row in rows:
        if row["problem"]:
            lines += _wrapped(f"{row['label']}: {row['problem']}", "  ")
            continue
        figures = f"{_banded(row['free_sag']):>11}{_banded(row['rider_sag']):>14}{_banded(row['end_multiple']):>12}"
        lines.append(f"  {row['label']:34}{figures}")
        lines += _wrapped(row["words"], "    ")
    return lines


def _rests_on(report: Data) -> list[str]:
    lines = ["Rests on:"]
    for path, found in report["fields"].items():
        field = FIELDS[path]
        if not found["applies"] or (found["value"] is None and not found["pairs"]) or path.split(".")[1].startswith("tried"):
            continue
        if field.kind == "choice":
            value = field.choices[found["value"]]
        elif found["pairs"]:
            value = f"{len(found['pairs'])} pairs"
        else:
            value = f"{found['value']:g} {found['unit']}".strip()
            value += f" +/-{found['plus_minus_95']:.2g}" if found["plus_minus_95"] else ""
        lines.append(f"  {field.label:42}{value:24}{found['origin']}")
    return lines


def _wrapped(text: str, indent: str = "") -> list[str]:
    return textwrap.wrap(text, WIDTH, initial_indent=indent, subsequent_indent=indent)
