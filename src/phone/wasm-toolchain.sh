#!/usr/bin/env bash
# Finds or makes a compiler that can build for wasm32-unknown-unknown, and prints the environment to use as
# NAME=value lines.   eval "$(src/phone/wasm-toolchain.sh | sed 's/^/export /')"
#   route 1: the toolchain has the target, or can be given it
#   route 2: Debian's rustc-web and rust-web-src, unpacked into a cache folder (nothing is installed), the
#            standard library built once
# WASM_ROUTE=rustup|debian forces one.  WASM_CACHE names the cache folder.
set -euo pipefail
target=wasm32-unknown-unknown
least=1.95
cache=${WASM_CACHE:-${XDG_CACHE_HOME:-$HOME/.cache}/wasm-toolchain}
say() { printf '%s\n' "$*" >&2; }

has_target() { [ -n "$(find "$(rustc --print sysroot)/lib/rustlib/$target/lib" -name 'libcore-*.rlib' 2>/dev/null)" ]; }

if [ "${WASM_ROUTE:-rustup}" = rustup ]; then
    if has_target || { command -v rustup >/dev/null && timeout 120 rustup target add "$target" >&2 && has_target; }; then
        say "wasm: the toolchain's own $target"
        echo "WASM_ROUTE_USED=rustup"
        exit 0
    fi
    [ -z "${WASM_ROUTE:-}" ] || { say "wasm: the toolchain cannot be given $target"; exit 1; }
fi

# ---- route 2 -------------------------------------------------------------------------------------
say "wasm: Debian's compiler, in $cache"
mkdir -p "$cache"
exec 9>"$cache/lock"; flock 9                          # two builds at once: the second waits
version=$(apt-cache policy rustc-web | sed -n 's/^ *Candidate: \([0-9]*\.[0-9]*\).*/\1/p')
if [ -z "$version" ]; then apt-get update -qq >&2; version=$(apt-cache policy rustc-web | sed -n 's/^ *Candidate: \([0-9]*\.[0-9]*\).*/\1/p'); fi
[ "$(printf '%s\n' "$least" "$version" | sort -V | head -1)" = "$least" ] || { say "wasm: rustc-web $version is older than $least"; exit 1; }
lld=$(rustc --print sysroot)/lib/rustlib/$(rustc -vV | sed -n 's/^host: //p')/bin/rust-lld
[ -x "$lld" ] || lld=$(command -v wasm-ld-19 || command -v wasm-ld || true)
[ -n "$lld" ] || { apt-get install -y -qq --no-install-recommends lld-19 >&2; lld=$(command -v wasm-ld-19); }

done_mark=$cache/$version.done
root=$cache/$version
if [ ! -e "$done_mark" ]; then
    rm -rf "$root" "$root.debs"; mkdir -p "$root" "$root.debs"
    llvm=$(apt-cache depends "libstd-rust-web-$version" | sed -n 's/^ *Depends: \(libllvm[0-9]*\)$/\1/p')
    (cd "$root.debs" && apt-get download -qq rustc-web rust-web-src libstd-rust-web-dev "libstd-rust-web-$version" "$llvm" 2>&1 | grep -v unsandboxed >&2 || true)
    [ "$(ls "$root.debs"/*.deb | wc -l)" = 5 ] || { say "wasm: not all packages came"; exit 1; }
    for deb in "$root.debs"/*.deb; do dpkg -x "$deb" "$root"; done
    rm -rf "$root.debs"
    lib=$root/usr/lib/x86_64-linux-gnu
    if LD_LIBRARY_PATH=$lib ldd "$lib"/librustc_driver-*.so "$lib"/libLLVM.so.* | grep -q 'not found'; then
        apt-get install -y -qq --no-install-recommends "$llvm" >&2     # brings the small libraries that it needs
    fi
    printf '#!/bin/sh\nexec env LD_LIBRARY_PATH=%s %s "$@"\n' "$lib" "$root/usr/bin/rustc" > "$root/rustc"
    chmod +x "$root/rustc"
    # The profile "dist" is the one that the standard library's own authors ship with: it keeps bitcode for LTO.
    # -Zforce-unstable-if-unmarked keeps the library's private crates out of sight of ours.
    (cd "$root"/usr/src/rustc-*/library && env -u RUSTUP_TOOLCHAIN -u CARGO_ENCODED_RUSTFLAGS RUSTC="$root/rustc" RUSTC_BOOTSTRAP=1 \
        RUSTFLAGS=-Zforce-unstable-if-unmarked CARGO_PROFILE_DIST_DEBUG=0 CARGO_INCREMENTAL=0 CARGO_TARGET_DIR="$root.target" \
        cargo build --locked --quiet --profile dist --target "$target" -p std -p panic_abort >&2)
    mkdir -p "$root/usr/lib/rustlib/$target/lib"
    cp "$root.target/$target/dist/deps/"*.rlib "$root/usr/lib/rustlib/$target/lib/"
    rm -rf "$root.target" "$root"/usr/src "$root"/usr/lib/rustlib/src "$root"/usr/share
    touch "$done_mark"
fi
echo "WASM_ROUTE_USED=debian"
echo "RUSTC=$root/rustc"
echo "CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_LINKER=$lld"
echo "CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUSTFLAGS=-Clinker-flavor=wasm-ld"
