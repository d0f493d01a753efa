"""What the sheet of an oil's tin tells: one module a law."""
