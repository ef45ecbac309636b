"""Draft sheets over HTTP: the request, the work, and the shapes of the answers."""
