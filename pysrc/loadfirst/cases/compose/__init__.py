"""Cases made from a seed: what happened is drawn, the words are chosen by what the model says of it."""
