"""The published motorcycle: open data set of github.com/TUMFTM/motorcycle_model, commit a502214, Data/*.xml.

Its figures come from Sharp, Evangelou & Limebeer, Multibody System Dynamics 12 (2004) 251-283. Here in mm, N, kg, rad;
its gravity is 9.81 N/kg. "Published" stands in the data set; "derived" was worked out from it by hand.
"""

GRAVITY = 9.81
RAKE = 0.4189
FRONT_LOAD, REAR_LOAD = 1172.57, 1272.19  # N, published static wheel loads
FRONT_UNSPRUNG = 6.5 + 11.9  # kg: lower fork and wheel
FORK_RATE = 17.0  # N/mm, both legs
FORK_SPRING_LOAD = 906.30  # N along the axis, published
SHOCK_RATE = 58.570  # N/mm
SHOCK_SPRING_LOAD = 1946.22  # N, published
RATIO = 0.55365  # shock over wheel, derived
RATIO_SLOPE = 0.702e-3  # per mm, derived
FRONT_WHEEL_RATE = 20.370  # N/mm, derived
REAR_WHEEL_RATE = 19.320  # N/mm, derived: 17.953 + 1.367
FRONT_FREQUENCY, REAR_FREQUENCY = 2.26, 2.11  # Hz, derived

SWINGARM, REAR_WHEEL = 8.0, 14.7  # kg
PIVOT_X, AXLE_X, SWINGARM_CENTRE_X = -0.1289, -0.6779, -0.4819  # m
REAR_UNSPRUNG = REAR_WHEEL + SWINGARM * (SWINGARM_CENTRE_X - PIVOT_X) / (AXLE_X - PIVOT_X)

SHOCK_LENGTH = 313.521  # mm at rest, published
SWINGARM_PIVOT = (-0.1289, -0.1116)  # m, x forward and z up from the frame's origin, published like all of these
_ROCKER_PIVOT = (-0.1389, -0.2846)
REAR_POINTS = {
    "axle": (-0.6779, -0.1754),
    "shock top": (-0.1909, 0.0164),
    "rocker pivot": _ROCKER_PIVOT,
    "rod on rocker": (_ROCKER_PIVOT[0] - 0.0444, _ROCKER_PIVOT[1] - 0.0356),
    "shock on rocker": (_ROCKER_PIVOT[0] - 0.0947, _ROCKER_PIVOT[1] - 0.0096),
    "rod on swingarm": (SWINGARM_PIVOT[0] - 0.1768, SWINGARM_PIVOT[1] - 0.0860),
}
