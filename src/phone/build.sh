#!/usr/bin/env bash
# Builds the page for a phone from the source: bash src/phone/build.sh [PAGE]
#
# 1. the core as a WebAssembly module, with rulesets that leave their worked examples out
# 2. packed with xz: target/page/guardrule.wasm.lzma
# 3. the page around it, by guardrule page: target/page/guardrule.html, or PAGE
#
# A program with the page inside, afterwards:
#   GUARDRULE_PAGE_MODULE=$PWD/target/page/guardrule.wasm.lzma cargo install --path . --features page
set -euo pipefail
cd "$(dirname "$0")/../.."
out=$PWD/target/page
page=${1:-$out/guardrule.html}
target=wasm32-unknown-unknown
tree=$out/tree

# A copy of the source: no guard is judged by an example or a comment of a ruleset, and
# without them the page is a twentieth smaller. Lines stay where they were.
mkdir -p "$tree/rulesets"
cp -a Cargo.toml Cargo.lock README.md "$tree/"
rm -rf "$tree/src" "$tree/tests" "$tree/benches"
cp -a src "$tree/src"
ln -s "$PWD/tests" "$tree/tests"
ln -s "$PWD/benches" "$tree/benches"
rm -f "$tree/rulesets/"*
for ruleset in rulesets/*.toml; do
    awk '/^[[:space:]]*\[/ { dropped = ($0 ~ /^[[:space:]]*\[+rule\.example/) }
        { if (dropped || $0 ~ /^[[:space:]]*#/) print ""; else print }' "$ruleset" > "$tree/$ruleset"
    touch -r "$ruleset" "$tree/$ruleset"
done

(
    eval "$(src/phone/wasm-toolchain.sh | sed 's/^/export /')"
    cd "$tree"
    # small code that is called often stands where it is called: a sixth faster for a hundredth more bytes
    export CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUSTFLAGS="${CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUSTFLAGS:-} -Cllvm-args=-inline-threshold=20"
    # a folder for each compiler: two that share one rebuild everything each time
    cargo rustc --locked --lib --crate-type cdylib --no-default-features --profile "${PAGE_PROFILE:-phone}" \
        --target "$target" --target-dir "$out/$WASM_ROUTE_USED"
    cp "$out/$WASM_ROUTE_USED/$target/${PAGE_PROFILE:-phone}/guardrule.wasm" "$out/guardrule.wasm"
)
# packed, with the size that xz leaves open written into the head
command -v xz >/dev/null || { echo "xz is needed: apt-get install xz-utils" >&2; exit 1; }
xz --format=lzma --lzma1=preset=9e,lc=4,lp=0,pb=0 -c "$out/guardrule.wasm" > "$out/guardrule.wasm.lzma"
size=$(wc -c < "$out/guardrule.wasm")
for place in 0 1 2 3 4 5 6 7; do
    printf "\\$(printf %03o $((size >> 8 * place & 255)))" | dd of="$out/guardrule.wasm.lzma" bs=1 seek=$((5 + place)) conv=notrunc status=none
done
cargo run --locked --quiet -- page --module "$out/guardrule.wasm.lzma" --force --output "$page"
printf '%s: %s bytes (module %s, packed %s)\n' "$page" "$(wc -c < "$page")" "$(wc -c < "$out/guardrule.wasm")" "$(wc -c < "$out/guardrule.wasm.lzma")" >&2
