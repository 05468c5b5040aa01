"""Sizing rules, one file for each kind."""
