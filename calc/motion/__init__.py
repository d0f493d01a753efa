"""Motion: how a strut's stroke follows the wheel."""
