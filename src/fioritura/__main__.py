"""``python -m fioritura`` runs the command line."""

import sys

from fioritura.cli import main

sys.exit(main())
