# docker build -t tapeline .
# docker run --read-only --cap-drop ALL --security-opt no-new-privileges \
#     --stop-timeout 65 -p 8000:8000 tapeline
#
# Nothing is written, not even to a temp folder; no shell is needed to start, to check or to stop it.
FROM python:3.12 AS build

COPY pyproject.toml README.md LICENSE /build/
COPY drafting /build/drafting
COPY service /build/service
# What computes is compiled; without the variable all is plain Python.
RUN HATCH_BUILD_HOOK_ENABLE_MYPYC=true pip wheel --no-cache-dir --no-deps --wheel-dir /wheel /build

FROM python:3.12-slim

COPY --from=build /wheel /wheel
RUN pip install --no-cache-dir /wheel/*.whl && rm -r /wheel

# A number, so that a cluster can tell that it is not root.
USER 10001:10001
WORKDIR /
ENV TAPELINE_HOST=0.0.0.0 PYTHONDONTWRITEBYTECODE=1 PYTHONUNBUFFERED=1
EXPOSE 8000
STOPSIGNAL SIGTERM
HEALTHCHECK --interval=30s --timeout=5s --start-period=10s \
    CMD ["python", "-c", "import urllib.request; urllib.request.urlopen('http://127.0.0.1:8000/healthz', timeout=3)"]
CMD ["python", "-m", "service", "serve"]
