"""The offer as plain text for the command line: what the page prints."""

from __future__ import annotations

from calc.report.columns import columns, wrapped
from calc.report.types import OfferOption, OptionBetween, OptionDone, Report

NONE = 'There is no offer in this job. Its key is "offer"; --demo trail --job shows one.'


def offer_text(report: Report) -> str:
    """The offer alone.

    Parameters: report.
    Returns: its head, each option with what it does and costs, two by two, and what holds for all.
    Raises: nothing.
    Formula: none.
    Source: none.
    Example:
        >>> from calc.demo import jobs
        >>> from calc.report import report
        >>> offer_text(report(jobs()["trail"])).splitlines()[0]
        'Offer: Saltmarsh 250 T (demo, invented), 2026-06-03'
    """
    if report.offer is None:
        return NONE
    header = report.header
    name = f"{header.name or 'A bike with no name'}{' (demo, invented)' if header.invented else ''}"
    lines = [", ".join(part for part in (f"Offer: {name}", header.owner, header.date) if part)]
    return "\n".join([*lines, *offer_lines(report)])


def offer_lines(report: Report) -> list[str]:
    """The offer under its head."""
    offer, told = report.offer, report.options
    if offer is None:
        return []
    lines = [*wrapped(offer.invented)]
    if offer.complaints:
        lines.append("Complaints:")
    for number, words in enumerate(offer.complaints, 1):
        lines += wrapped(f"{number}  {words}", "     ", "  ")
    done = {one.number: one for one in told.options} if told else {}
    for option in offer.options:
        lines += ["", *_option(option, done.get(option.number))]
    if told:
        lines += [line for one in told.between for line in ("", *_between(one))]
        lines += ["", *wrapped(told.problem), *wrapped(told.note)]
    return [*lines, *wrapped(offer.tax), *wrapped(offer.note)]


def _option(option: OfferOption, done: OptionDone | None) -> list[str]:
    lines = [option.title, *wrapped(option.note, "  ", "  ")]
    lines += [line for end in (done.ends if done else ()) for line in wrapped(end.words, "    ", "  ")]
    if option.lines:
        rows = [[line.what, line.count, line.price, line.amount] for line in option.lines]
        lines += columns(["", "", "each", "amount"], rows)
    lines += wrapped(option.bill.words if option.bill else f"No total yet. {' '.join(option.waits)}", "  ", "  ")
    said = (
        ("", option.complaints),
        ("Adjusters: ", option.adjusters),
        ("Valving: ", option.valving),
        ("Service: ", option.service),
        ("Not known: ", option.unknown),
    )
    return [*lines, *(line for label, words in said if words for line in wrapped(f"{label}{words}", "    ", "  "))]


def _between(told: OptionBetween) -> list[str]:
    lines = [line for words in (*told.words, told.lead) if words for line in wrapped(words, "  ")]
    for row in told.differs:
        said = f"{row.label}. Option {told.one}: {row.one}. Option {told.other}: {row.other}."
        lines += wrapped(said, "    ", "  ")
    return lines
