"""Shims by plate theory: against a handbook's table and what holds of every stack."""

from random import Random

import pytest

from calc.damping.shims import Group, stiffness
from calc.impossible import Impossible


@pytest.mark.parametrize(("ratio", "published"), [(0.3, 0.03182), (0.5, 0.00859), (0.7, 0.00110)])
def test_one_group_is_the_handbooks_ring(ratio, published):
    """Roark's Formulas, Table 11.2, case 2l (table from memory, recomputed two ways): y D / (q a^4), nu 0.3, 0.5 %."""
    group = Group(1, 24.0, 0.2)
    coefficient = group.rigidity / (stiffness([group], 24.0 * ratio) * 12.0**4)
    assert coefficient == pytest.approx(published, rel=0.005)


def test_it_goes_by_the_cube_of_the_thickness_and_by_the_count():
    one = stiffness([Group(1, 24.0, 0.1)], 12.0)
    assert stiffness([Group(1, 24.0, 0.2)], 12.0) == pytest.approx(8.0 * one)
    assert stiffness([Group(5, 24.0, 0.1)], 12.0) == pytest.approx(5.0 * one)
    assert stiffness([Group(2, 24.0, 0.1), Group(3, 24.0, 0.1)], 12.0) == pytest.approx(5.0 * one)


@pytest.mark.parametrize("seed", range(20))
def test_no_shim_that_is_added_makes_it_softer_and_the_order_is_none(seed):
    rng = Random(f"shims {seed}")
    groups = [
        Group(rng.randint(1, 5), rng.uniform(13, 28), rng.choice((0.1, 0.15, 0.2, 0.25, 0.3))) for _ in range(rng.randint(1, 5))
    ]
    widest = max(group.diameter for group in groups)
    before = stiffness(groups, 12.0)
    assert stiffness([*groups, Group(1, rng.uniform(12.5, widest), 0.1)], 12.0) > before
    rng.shuffle(groups)
    assert stiffness(groups, 12.0) == pytest.approx(before, rel=1e-12)


def test_a_small_one_that_hardly_leaves_the_clamp_does_hardly_anything():
    """What it holds is that part of the ring which does not bend yet."""
    alone = stiffness([Group(3, 24.0, 0.15)], 12.0)
    assert stiffness([Group(3, 24.0, 0.15), Group(1, 12.01, 0.3)], 12.0) / alone == pytest.approx(1.0, abs=0.01)


def test_one_as_wide_as_the_others_is_as_good_as_one_of_them():
    wide = stiffness([Group(3, 24.0, 0.15), Group(1, 24.0, 0.15)], 12.0)
    assert stiffness([Group(3, 24.0, 0.15), Group(1, 23.999, 0.15)], 12.0) == pytest.approx(wide, rel=2e-3)


def test_what_cannot_bend_is_refused():
    with pytest.raises(Impossible, match="A shim of 11 mm does not reach beyond the clamp of 12 mm"):
        stiffness([Group(1, 24.0, 0.2), Group(1, 11.0, 0.2)], 12.0)
    with pytest.raises(Impossible, match="no shim"):
        stiffness([], 12.0)
