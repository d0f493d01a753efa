"""The built setup hot, high, and with other riders."""
