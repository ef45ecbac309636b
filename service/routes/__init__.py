"""Every route of the service, each in the room of its subject."""

from service.routes import (
    batches,
    garments,
    measurements,
    operations,
    pages,
    patterns,
    size_ranges,
)

ROUTERS = (
    patterns.router,
    size_ranges.router,
    batches.router,
    garments.router,
    measurements.router,
    operations.router,
    pages.router,
)

__all__ = ["ROUTERS"]
