"""Linkage points: the published motorcycle, the loop walked round, and what cannot be."""

import numpy as np
import pytest
from hypothesis import assume, given
from hypothesis import strategies as st

from calc.end.end import End
from calc.end.strut import Strut
from calc.gas.chamber import ISOTHERMAL
from calc.impossible import Impossible
from calc.motion.linkage import LinkageMotion, Rocker
from calc.springs.helical import LinearSpring
from tests.support import motorcycle as m

AT_REST, FULL = 60.0, 130.0  # mm: the data set's points are those at rest; how far that is from hanging is ours


def point(x: float, z: float) -> np.ndarray:
    return np.array(x + 1j * z)


def published(on_swingarm: bool = False) -> LinkageMotion:
    """The rear end of the data set, its points moved to the swingarm pivot."""
    at = {name: point(*(1000.0 * (a - b) for a, b in zip(xz, m.SWINGARM_PIVOT, strict=True))) for name, xz in m.REAR_POINTS.items()}
    rocker = Rocker(at["rocker pivot"], at["rod on rocker"], at["shock on rocker"], at["rod on swingarm"], on_swingarm)
    return LinkageMotion(at["axle"], at["shock top"], point(0, 0), AT_REST, FULL, rocker)


def direct(at: float = 0.0, full: float = 120.0) -> LinkageMotion:
    return LinkageMotion(point(-550, -60), point(-180, 330), point(-260, -20), at, full)


def test_shock_length_of_the_published_motorcycle():
    """Published 0.313521 m at rest, tolerance 0.01 %."""
    assert float(published().length(AT_REST)) == pytest.approx(m.SHOCK_LENGTH, rel=1e-4)


def test_ratio_and_slope_of_the_published_motorcycle():
    """Derived 0.55365 (leverage 1.8062) and +0.702 per m."""
    motion = published()
    assert float(motion.ratio(AT_REST)) == pytest.approx(m.RATIO, abs=5e-6)
    assert 1.0 / float(motion.ratio(AT_REST)) == pytest.approx(1.8062, abs=5e-5)
    assert float(motion.slope(AT_REST)) == pytest.approx(m.RATIO_SLOPE, abs=0.0005e-3)


def test_rear_loads_and_wheel_rate_of_the_published_motorcycle():
    """Published 1946.22 N on the shock from 1272.19 N on the wheel, 0.01 %; derived 17 953 + 1 367 = 19 320 N/m at the wheel."""
    motion = published()
    sprung = m.REAR_LOAD - m.REAR_UNSPRUNG * m.GRAVITY
    assert sprung / float(motion.ratio(AT_REST)) == pytest.approx(m.SHOCK_SPRING_LOAD, rel=1e-4)
    spring = LinearSpring(m.SHOCK_RATE, m.SHOCK_SPRING_LOAD / m.SHOCK_RATE - float(motion.stroke(AT_REST)))
    end = End(((Strut((spring,), (), 0.1), 1.0),), motion, FULL)
    assert float(end.wheel_force(AT_REST, ISOTHERMAL)) == pytest.approx(sprung, rel=1e-4)
    assert float(end.wheel_rate(AT_REST, ISOTHERMAL)) == pytest.approx(m.REAR_WHEEL_RATE, rel=1e-4)
    assert m.SHOCK_RATE * float(motion.ratio(AT_REST)) ** 2 == pytest.approx(17.953, abs=0.0006)


@pytest.mark.parametrize("motion", [direct(), published()], ids=["direct", "rocker"])
def test_ratio_is_the_slope_of_stroke_and_slope_that_of_ratio(motion):
    z, step = np.linspace(1.0, float(motion.full_travel) - 1.0, 40), 1e-3
    assert (motion.stroke(z + step) - motion.stroke(z - step)) / (2 * step) == pytest.approx(motion.ratio(z), rel=1e-7)
    assert (motion.ratio(z + step) - motion.ratio(z - step)) / (2 * step) == pytest.approx(motion.slope(z), abs=1e-9)
    assert motion.travel(motion.stroke(z)) == pytest.approx(z, abs=1e-6)


@pytest.mark.parametrize("motion", [direct(), published()], ids=["direct", "rocker"])
def test_every_bar_keeps_its_length_and_the_wheel_rises_as_asked(motion):
    z = np.linspace(0.0, float(motion.full_travel), 50)
    at = {name: np.asarray(x) + 1j * np.asarray(y) for name, (x, y) in motion.points(z).items()}
    assert at["axle"].imag - at["axle"].imag[0] == pytest.approx(z)
    bars = [("swingarm pivot", "axle")]
    if motion.rocker:
        bars += [("rocker pivot", "rod on rocker"), ("rocker pivot", "shock on rocker"), ("rod on rocker", "rod's other end")]
        bars += [("rod on rocker", "shock on rocker"), ("axle", "rod's other end"), ("swingarm pivot", "rod's other end")]
    else:
        bars += [("swingarm pivot", "shock foot"), ("axle", "shock foot")]
    for one, other in bars:
        assert abs(at[one] - at[other]) == pytest.approx(abs(at[one] - at[other])[0] * np.ones(50), rel=1e-12), (one, other)
    foot = at["shock on rocker"] if motion.rocker else at["shock foot"]
    assert abs(foot - at["shock top"]) == pytest.approx(motion.length(z))


def test_where_the_points_were_measured_does_not_matter():
    """The same linkage, its points read again half way up, is the same motion."""
    first = published()
    at = {name: point(float(x), float(z)) for name, (x, z) in first.points(65.0).items()}
    rocker = Rocker(at["rocker pivot"], at["rod on rocker"], at["shock on rocker"], at["rod's other end"])
    again = LinkageMotion(at["axle"], at["shock top"], point(0, 0), 65.0, FULL, rocker)
    z = np.linspace(0.0, FULL, 9)
    assert again.stroke(z) == pytest.approx(first.stroke(z), abs=1e-9)
    assert again.slope(z) == pytest.approx(first.slope(z), abs=1e-12)


def test_a_rocker_on_the_swingarm_rides_with_it_and_its_rod_holds_to_the_frame():
    motion = on_swingarm()
    z = np.linspace(0.0, float(motion.full_travel), 30)
    at = {name: np.asarray(x) + 1j * np.asarray(y) for name, (x, y) in motion.points(z).items()}
    still, carried = ("rod's other end", "shock top"), ("axle", "rocker pivot")
    for name in still:
        assert np.ptp(at[name].real) == pytest.approx(0.0, abs=1e-12)
    for name in carried:
        assert abs(at[name]) == pytest.approx(abs(at[name])[0] * np.ones(30))
    rod = abs(at["rod on rocker"] - at["rod's other end"])
    assert rod == pytest.approx(rod[0] * np.ones(30), rel=1e-12)
    assert abs(at["shock on rocker"] - at["shock top"]) == pytest.approx(motion.length(z))
    leverage = 1.0 / motion.ratio(np.array([0.0, 300.0]))
    assert 2.4 < leverage[0] < 2.8
    assert 0.7 < leverage[1] / leverage[0] < 0.85  # falls as common practice has it off road


def on_swingarm() -> LinkageMotion:
    """An off-road linkage of our own: rocker under the swingarm, rod to the frame."""
    rocker = Rocker(point(-172, -60), point(-202, -132), point(-131, -131), point(4, -158), True)
    return LinkageMotion(point(-570, -130), point(-74, 313), point(0, 0), 0.0, 300.0, rocker)


def test_slopes_of_a_rocker_on_the_swingarm():
    motion, step = on_swingarm(), 1e-3
    z = np.linspace(1.0, 299.0, 40)
    assert (motion.stroke(z + step) - motion.stroke(z - step)) / (2 * step) == pytest.approx(motion.ratio(z), rel=1e-7)
    assert (motion.ratio(z + step) - motion.ratio(z - step)) / (2 * step) == pytest.approx(motion.slope(z), abs=1e-9)


coordinates = st.floats(-400, 400)


@given(
    top=st.tuples(coordinates, st.floats(150, 500)),
    foot=st.tuples(st.floats(-450, -80), st.floats(-120, 120)),
    at=st.floats(0, 100),
)
def test_any_direct_shock_either_moves_or_is_refused(top, foot, at):
    try:
        motion = LinkageMotion(point(-550, -60), point(*top), point(*foot), at, 150.0)
    except Impossible as error:
        assert error.field == "rear.axle_x"
        return
    z = np.linspace(0.0, 150.0, 31)
    assert np.all(np.diff(motion.stroke(z)) > 0)
    assert np.all(np.isfinite(motion.slope(z)))


@given(points=st.tuples(*(st.tuples(coordinates, coordinates) for _ in range(5))), swung=st.booleans())
def test_any_rocker_either_moves_or_is_refused(points, swung):
    top, *rest = (point(*p) for p in points)
    try:
        motion = LinkageMotion(point(-550, -60), top, point(0, 0), 0.0, 60.0, Rocker(*rest, swung))
    except Impossible as error:
        assert error.way_out
        return
    z = np.linspace(0.0, 60.0, 31)
    assert np.all(np.diff(motion.stroke(z)) > 0)
    assume(np.min(motion.length(z)) > 1.0)
    assert np.all(np.isfinite(motion.slope(z)))


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (dict(full_travel=900.0), "cannot rise or fall so far on a swingarm of 553 mm"),
        (dict(shock_foot=point(-260, 700)), "does not shorten"),
        (dict(axle=point(0, 0)), "pivot and the axle are in one place"),
    ],
)
def test_what_a_direct_shock_cannot_be(change, words):
    plain = dict(axle=point(-550, -60), shock_top=point(-180, 330), shock_foot=point(-260, -20), measured_at=0.0, full_travel=120.0)
    with pytest.raises(Impossible, match=words):
        LinkageMotion(**(plain | change))


@pytest.mark.parametrize(
    ("change", "words"),
    [
        (dict(rod_other=point(-20, -173)), "the rod's other end are in one place|meet"),
        (dict(rod_rocker=point(-40, -180)), "Rod and rocker"),
        (dict(pivot=point(-54.4, -208.6)), "rod are in one place"),
    ],
)
def test_what_a_rocker_cannot_be(change, words):
    rocker = published().rocker
    parts = {name: getattr(rocker, name) for name in ("pivot", "rod_rocker", "shock_rocker", "rod_other")}
    with pytest.raises(Impossible, match=words):
        LinkageMotion(published().axle, published().shock_top, point(0, 0), AT_REST, FULL, Rocker(**(parts | change)))


def test_rod_and_rocker_in_one_line_as_measured_are_refused():
    rocker = Rocker(point(-10, -170), point(-60, -170), point(-100, -180), point(-160, -170))
    with pytest.raises(Impossible, match="in one line"):
        LinkageMotion(point(-550, -60), point(-60, 120), point(0, 0), 0.0, 60.0, rocker)


def test_scalar_and_array_agree_and_draws_stand_side_by_side():
    motion, z = published(), np.linspace(0, FULL, 7)
    for name in ("stroke", "ratio", "slope", "length"):
        assert getattr(motion, name)(z) == pytest.approx([float(getattr(motion, name)(each)) for each in z], rel=1e-14)
    drawn = LinkageMotion(np.array([-550 - 60j, -552 - 61j]), point(-180, 330), point(-260, -20), 0.0, np.array([120.0, 122.0]))
    assert np.shape(drawn.stroke(z[:, None])) == (7, 2)
    assert drawn.stroke(z[:, None])[:, 0] == pytest.approx(direct().stroke(z))
