"""Every route of the service, each in the room of its subject."""

from service.routes import (
    batches,
    draft_sheets,
    garments,
    lay_plans,
    links,
    measurement_checks,
    measurements,
    operations,
    pages,
    patterns,
    size_ranges,
    size_tables,
)

ROUTERS = (
    patterns.router,
    size_ranges.router,
    lay_plans.router,
    draft_sheets.router,
    batches.router,
    links.router,
    garments.router,
    measurements.router,
    measurement_checks.router,
    size_tables.router,
    operations.router,
    pages.router,
)

__all__ = ["ROUTERS"]
