"""Finish: film, thinning, blush, pores, polishing."""
