"""From a job's readings to the model: conditions, axle loads, both ends' assemblies, limits."""

from calc.model.airleg import has_coil
from calc.model.axles import aboard, alone, end_loads, loaded, loaded_frequency, rated_load, rider_share, standard_loads
from calc.model.conditions import Conditions, conditions
from calc.model.fork import fork, fork_as_sold
from calc.model.gaps import found_gaps, oil_to_add
from calc.model.limits import free_sag_window, limits, sag_window, standard_setup
from calc.model.shock import shock

__all__ = [
    "Conditions",
    "aboard",
    "alone",
    "conditions",
    "end_loads",
    "fork",
    "fork_as_sold",
    "found_gaps",
    "free_sag_window",
    "has_coil",
    "limits",
    "loaded",
    "loaded_frequency",
    "oil_to_add",
    "rated_load",
    "rider_share",
    "sag_window",
    "shock",
    "standard_loads",
    "standard_setup",
]
