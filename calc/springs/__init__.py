"""Springs: one module a kind."""
