"""Every reading as draws: bands, shares, how sure a choice is."""
