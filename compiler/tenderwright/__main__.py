"""Run the command line as `python -m tenderwright`."""

import sys

from tenderwright.cli import main

sys.exit(main())
