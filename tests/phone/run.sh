#!/usr/bin/env bash
# Builds the page, compares its module with the command line, and drives it in a browser: bash tests/phone/run.sh
set -euo pipefail
cd "$(dirname "$0")/../.."
missing=()
command -v chromium >/dev/null || missing+=(chromium)
command -v npm >/dev/null || missing+=(nodejs npm)
command -v xz >/dev/null || missing+=(xz-utils)
command -v firefox-esr >/dev/null || missing+=(firefox-esr)
if [ ${#missing[@]} -gt 0 ]; then
    as_root=()
    [ "$(id -u)" -eq 0 ] || as_root=(sudo)
    "${as_root[@]}" apt-get update -q
    "${as_root[@]}" apt-get install -y -q --no-install-recommends "${missing[@]}" fonts-liberation fonts-dejavu-core
fi
[ -d tests/pages/node_modules/playwright-core ] || (cd tests/pages && PLAYWRIGHT_SKIP_BROWSER_DOWNLOAD=1 npm ci --no-audit --no-fund --silent)
bash src/phone/build.sh
node tests/phone/same.mjs target/page/guardrule.wasm target/debug/guardrule "${SURVEYS:-100}"
node --test --test-concurrency=1 tests/phone/page.test.mjs
node tests/phone/firefox.mjs
