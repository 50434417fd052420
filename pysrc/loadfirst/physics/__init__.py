"""The laws of the elements and the network that balances them. SI, numpy only."""
