"""Questions asked of the design, one family a file. A check neither prints nor raises."""
