"""The finish: lacquer film, levelling and polishing."""
