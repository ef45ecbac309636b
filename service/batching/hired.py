"""The hands that an installation has."""

from __future__ import annotations

from typing import TYPE_CHECKING

from service.batching.cluster import ClusterHands
from service.batching.hands import Hands, LocalHands

if TYPE_CHECKING:
    from service.settings import Settings


def hands_for(settings: Settings) -> Hands:
    """A cluster's, where the settings name one, else processes of this machine."""
    if settings.cluster:
        longest = max(settings.order_seconds, settings.range_seconds, settings.lay_seconds)
        return ClusterHands(settings.cluster, longest)
    return LocalHands(settings.batch_workers)
