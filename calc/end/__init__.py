"""An end of the bike: struts, motion and load together; where it settles and what it does."""
