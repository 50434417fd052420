"""Puzzles on misread readings: the format, the play, the judgement."""
