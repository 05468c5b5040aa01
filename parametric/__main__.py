"""`python -m parametric`."""

from parametric.cli.app import main

if __name__ == "__main__":
    main()
