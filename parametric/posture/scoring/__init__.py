"""How good a posture is by published methods: scores, holding times, viewing, work rhythm.

Pure functions of angles and heights; most take equal-shape arrays as well as single numbers.
"""
