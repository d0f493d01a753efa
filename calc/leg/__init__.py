"""The gas of a fork leg, by its kind."""
