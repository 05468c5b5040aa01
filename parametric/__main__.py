"""`python -m parametric`."""

from __future__ import annotations

from parametric.cli.app import main

if __name__ == "__main__":
    main()
