"""Will it fit: widths, collar and spacers."""

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from calc.springs.fit import Fit, outside_closed, seat_move


@given(wire=st.floats(3, 12), index=st.floats(4, 10), turns=st.floats(5, 60), spread=st.floats(1.05, 4))
def test_the_wire_of_a_turn_keeps_its_length(wire, index, turns, spread):
    """Second method: a helix of pitch p and mean diameter D is sqrt((pi D)^2 + p^2) long a turn, free and closed alike."""
    mean, solid = wire * index, wire * turns
    closed = outside_closed(mean + wire, mean - wire, solid * spread, solid) - wire
    assert np.hypot(np.pi * closed, wire) == pytest.approx(np.hypot(np.pi * mean, wire * spread), rel=1e-9)
    assert closed > mean


def test_moves_of_the_seat():
    assert seat_move(9.0, 6.0, 0.0) == 3.0
    assert seat_move(6.0, 6.0, 10.0) == -10.0  # a longer spring at the same preload: as much less spacer


BARE = Fit(4.2, 6.0)
SIZED = Fit(4.2, 6.0, 470.0, 480.0, 160.0, 42.0, 33.0, 43.0, 30.0)
RATES = np.array([4.2, 4.6])


def test_nothing_known_bars_nothing():
    assert BARE.vetoes(RATES) == {}
    assert (BARE.longer, BARE.widest) == (0.0, None)


def test_the_fitted_spring_fits_whatever_the_new_one_measures():
    barred = Fit(4.2, 6.0, 470.0, 480.0, 160.0, 42.0, 33.0, 42.05, 33.0).vetoes(RATES)
    assert barred["too wide"].tolist() == [False, True]
    assert barred["too narrow"].tolist() == [False, True]
    fits = SIZED.vetoes(RATES)
    assert not np.any(fits["too wide"])
    assert not np.any(fits["too narrow"])
    assert 42.0 < float(SIZED.widest) < 43.0


def test_thread_and_spacers_run_out():
    collar = Fit(48.0, 15.0, 250.0, 240.0, thread=3.0)
    assert collar.move(np.array([48.0, 56.0]), np.array([17.0, 9.0])).tolist() == [2.0, 4.0]
    assert [part.tolist() for part in np.broadcast_arrays(*collar.preload_between(np.array([48.0, 56.0])))] == [
        [-np.inf] * 2,
        [18.0, 8.0],
    ]
    spacers = Fit(4.2, 6.0, 470.0, 490.0, spacers=15.0)
    least, most = spacers.preload_between(RATES)
    assert np.asarray(least).tolist() == [-9.0, 11.0], "no spacer is cut to less than nothing"
    assert np.all(np.isinf(most))
