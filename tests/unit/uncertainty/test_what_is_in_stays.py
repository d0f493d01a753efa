"""A spring does not go for one that fewer draws choose than would keep it. Common practice, no source."""

from calc.job import load
from calc.job.starter import start
from calc.report import report_of
from tests.support.documents import changed

# A light rider on springs a little stiffer than usual, of which nobody knows whether the bike was sold with them.
STIFF = {"front.rate": "0.44 kg/mm", "rear.rate": "4.8 kg/mm"}


def test_more_draws_keep_what_is_in_than_choose_another():
    front = report_of(load(changed(start("motocross", "70 kg"), STIFF))).ends.front
    counts = {row.text: row.count for row in front.sure.counts}
    assert counts["4.31"] == max(counts.values())
    assert front.verdict == "open"
    assert front.chosen.fitted
    assert "Keep the 4.31 for now" in front.answer


def test_springs_that_are_as_sold_leave_no_such_doubt():
    """The same springs, known to be those it was sold with: the choice is measured by them."""
    sold = STIFF | {"standard.fork_springs": "as sold", "standard.shock_spring": "as sold"}
    front = report_of(load(changed(start("motocross", "70 kg"), sold))).ends.front
    assert front.verdict in ("keep", "fit")
    assert front.sure.settled
