"""An offer's options: what each costs, what each does on this bike, and whether two ride on the same force curve."""
