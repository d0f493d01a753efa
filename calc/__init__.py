"""Sizing core: springs, preload and oil height for a motorcycle and its rider.

Pure Python and numpy: no files, no network, no browser. Internal units are mm, N, MPa, kg, s, K and rad; scalars and
numpy arrays go through the same functions. Pint is used in `calc.quantities.entry` only.
"""
