"""The command line: one file for each command. The only room that talks to the terminal."""
