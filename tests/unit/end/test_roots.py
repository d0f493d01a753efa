"""Bracketed roots of many functions at once."""

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from calc.array import find_root


def test_a_known_root():
    assert float(find_root(lambda x: x * x - 2.0, 0.0, 2.0)) == pytest.approx(np.sqrt(2.0), abs=1e-10)


@given(targets=st.lists(st.floats(-0.99, 0.99), min_size=1, max_size=12))
def test_every_element_finds_its_own_root(targets):
    wanted = np.array(targets)
    found = find_root(lambda x: np.sin(x) - wanted, -np.pi / 2, np.pi / 2)
    assert found == pytest.approx(np.arcsin(wanted), abs=1e-8)


SHAPES = {
    "straight": lambda x, root: x - root,
    "flat at the root": lambda x, root: (x - root) ** 3,
    "growing fast": lambda x, root: np.exp(20.0 * x) - np.exp(20.0 * root),
    "gas near lock": lambda x, root: (1.0001 - x) ** -1.4 - (1.0001 - root) ** -1.4,
    "gas near lock, seen from the gap": lambda x, root: (1.0001 + root) ** -1.4 - (1.0001 + x) ** -1.4,
    "loose spring": lambda x, root: np.where(x > root, 1e6, 1e-3) * (x - root),
}


@given(
    shape=st.sampled_from(sorted(SHAPES)),
    root=st.floats(-0.95, 0.95).map(lambda x: round(x, 9)),
    tolerance=st.sampled_from([1e-6, 1e-9]),
)
@settings(max_examples=200)
def test_steep_flat_and_bent_functions(shape, root, tolerance):
    """A small step proves nothing while the bracket is wide: the root itself must be within the tolerance."""
    found = find_root(lambda x: SHAPES[shape](x, root), -1.0, 1.0, tolerance)
    assert float(found) == pytest.approx(root, abs=10 * tolerance)


def test_a_root_at_either_end():
    assert find_root(lambda x: x - 1.0, 1.0, 3.0) == 1.0
    assert find_root(lambda x: x - 3.0, 1.0, 3.0) == 3.0


def test_scalar_and_array_agree():
    levels = np.array([0.5, 2.0, 7.0])
    together = find_root(lambda x: x**3 - levels, 0.0, 2.0 + 0.0 * levels)
    alone = [float(find_root(lambda x, level=level: x**3 - level, 0.0, 2.0)) for level in levels]
    assert together == pytest.approx(alone, abs=1e-9)


def test_no_sign_change_is_an_error():
    with pytest.raises(ValueError, match="no sign change"):
        find_root(lambda x: x * x + 1.0, -1.0, 1.0)
    with pytest.raises(ValueError, match="no sign change"):
        find_root(lambda x: x * np.array([1.0, 0.0]) + np.array([0.0, 1.0]), -1.0, 1.0)


def test_a_value_that_is_not_finite_is_an_error():
    with pytest.raises(ValueError, match="no sign change"):
        find_root(lambda x: x * np.nan, -1.0, 1.0)
