"""Every route of the service, each in the room of its subject."""

from service.routes import garments, measurements, operations, pages, patterns

ROUTERS = (
    patterns.router,
    garments.router,
    measurements.router,
    operations.router,
    pages.router,
)

__all__ = ["ROUTERS"]
