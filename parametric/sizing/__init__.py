"""Rules that turn body, van and wishes into heights and lengths, and say which wishes clash."""
