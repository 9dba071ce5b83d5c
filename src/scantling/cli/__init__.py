"""The command line: reads arguments, calls the api, shows what comes back. Computes nothing."""
