"""``python -m scantling``."""

from scantling.cli.main import main

if __name__ == "__main__":
    main()
