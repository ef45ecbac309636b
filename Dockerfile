FROM python:3.12-slim

COPY pyproject.toml README.md LICENSE /build/
COPY drafting /build/drafting
COPY service /build/service
RUN pip install --no-cache-dir /build && rm -r /build && useradd --system tapeline

USER tapeline
WORKDIR /tmp
ENV TAPELINE_HOST=0.0.0.0 PYTHONDONTWRITEBYTECODE=1 PYTHONUNBUFFERED=1
EXPOSE 8000
HEALTHCHECK --interval=30s --timeout=5s --start-period=10s \
    CMD ["python", "-c", "import urllib.request; urllib.request.urlopen('http://127.0.0.1:8000/healthz', timeout=3)"]
CMD ["python", "-m", "service", "serve"]
