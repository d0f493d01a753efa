"""What is on offer, what can be built, and the choice."""
