"""The furniture as data: parts, contacts, joints, modes and the moves between them. No solids in here."""
