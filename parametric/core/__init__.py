"""Values every room shares: errors, rigid placements, shape recipes, checks and their sources.

Nothing in here knows what a bed is. Units are mm, N, MPa, kg and radians.
"""
