"""What a person may type: units, entries, readings with their +/- and origin."""
