"""Many orders at once, beside the event loop: in other processes of this machine, or on others."""
