"""Laws of a damper: what its rod and piston move, when its oil tears, what it does at the wheel, how stiff its shims are."""
