#!/usr/bin/env bash
# Opens every page that the program makes in a browser: bash tests/pages/run.sh
set -euo pipefail
cd "$(dirname "$0")"
missing=()
command -v chromium >/dev/null || missing+=(chromium)
command -v firefox-esr >/dev/null || command -v firefox >/dev/null || missing+=(firefox-esr)
command -v pdftotext >/dev/null || missing+=(poppler-utils)
command -v npm >/dev/null || missing+=(nodejs npm)
if [ ${#missing[@]} -gt 0 ]; then
  as_root=()
  [ "$(id -u)" -eq 0 ] || as_root=(sudo)
  "${as_root[@]}" apt-get update -q
  "${as_root[@]}" apt-get install -y -q --no-install-recommends "${missing[@]}" fonts-liberation fonts-dejavu-core
fi
npm ci --no-audit --no-fund --silent
cargo build --locked --quiet --manifest-path ../../Cargo.toml
GUARDRULE="$(realpath "${CARGO_TARGET_DIR:-../../target}")/debug/guardrule"
FIREFOX="${FIREFOX:-$(command -v firefox-esr || command -v firefox)}"
export GUARDRULE FIREFOX
node pages.mjs "$@"
node firefox.mjs "$@"
