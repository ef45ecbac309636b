"""Asks the service over ASGI, without a socket."""

from __future__ import annotations

import asyncio
import json
from collections.abc import Awaitable, Callable
from pathlib import Path
from typing import Any, TypeVar

import httpx
from fastapi import FastAPI

T = TypeVar("T")

EXAMPLES = Path(__file__).parents[2] / "openapi" / "examples"


def example(name: str = "trousers") -> dict[str, Any]:
    """A whole order of the examples."""
    return json.loads((EXAMPLES / f"{name}.json").read_text("utf-8"))


class Service:
    """An application, asked one question at a time."""

    def __init__(self, app: FastAPI) -> None:
        self.app = app

    def ask(self, method: str, path: str, **kwargs: Any) -> httpx.Response:
        return asyncio.run(self._ask(method, path, **kwargs))

    def get(self, path: str, **headers: str) -> httpx.Response:
        return self.ask("GET", path, headers=_names(headers))

    def order(self, document: Any, query: str = "", **headers: str) -> httpx.Response:
        """Post a document as an order."""
        return self.ask("POST", f"/v1/patterns{query}", json=document, headers=_names(headers))

    def send(self, body: bytes, **headers: str) -> httpx.Response:
        """Post bytes as they are, as JSON unless the headers say otherwise."""
        named = {"Content-Type": "application/json", **_names(headers)}
        return self.ask("POST", "/v1/patterns", content=body, headers=named)

    def run(self, talk: Callable[[httpx.AsyncClient], Awaitable[T]]) -> T:
        """What a talk of one's own with the service gives."""

        async def scene() -> T:
            async with self.client() as client:
                return await talk(client)

        return asyncio.run(scene())

    async def _ask(self, method: str, path: str, **kwargs: Any) -> httpx.Response:
        async with self.client() as client:
            return await client.request(method, path, **kwargs)

    def client(self) -> httpx.AsyncClient:
        transport = httpx.ASGITransport(app=self.app)
        return httpx.AsyncClient(transport=transport, base_url="http://tapeline.test")


def _names(headers: dict[str, str]) -> dict[str, str]:
    return {name.replace("_", "-"): value for name, value in headers.items()}


def refused(answer: httpx.Response, status: int, code: str) -> dict[str, Any]:
    """The problem of an answer, after a look at its form."""
    assert answer.status_code == status, answer.text[:500]
    assert answer.headers["content-type"] == "application/problem+json"
    problem = answer.json()
    assert set(problem) == {"type", "title", "status", "detail", "errors"}
    assert problem["type"] == f"/problems/{code}", problem
    assert problem["status"] == status
    assert problem["title"]
    assert problem["detail"]
    for error in problem["errors"]:
        assert set(error) == {"pointer", "code", "detail", "received", "allowed"}
        assert error["pointer"] == "" or error["pointer"].startswith("/")
    return problem


def trouble(problem: dict[str, Any], pointer: str) -> dict[str, Any]:
    """The one entry of a problem that points at a field."""
    found = [error for error in problem["errors"] if error["pointer"] == pointer]
    assert len(found) == 1, problem
    return found[0]
