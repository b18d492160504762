"""The demo tune that comes with the program."""
