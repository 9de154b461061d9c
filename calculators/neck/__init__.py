"""The neck and its board: fret places, pitch of the neck."""
