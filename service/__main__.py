"""What `python -m service` runs."""

import sys

from service.waste import built_to_stay

with built_to_stay():
    from service.command_line import main

if __name__ == "__main__":
    sys.exit(main())
