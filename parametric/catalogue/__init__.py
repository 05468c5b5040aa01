"""Tables of facts with their sources, and their readers: survey moments, timber, sheets, sections, hardware."""
