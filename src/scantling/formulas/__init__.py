"""Pure equations, one subject a file, floats in and out; every function says where it holds and where it is from."""
