#!/bin/sh
# sanitize.sh - the tests without a window under the address, undefined-behavior and
# leak sanitizers.
#
#   sh tests/sanitize.sh            # core, store, answer, draw, paper, fault, fuzz, cli
#   sh tests/sanitize.sh store-*    # or the tests named
set -u

top=$(CDPATH= cd -- "$(dirname -- "$0")/.." && pwd) || exit 1
build=$top/build-sanitize

[ -f "$build/build.ninja" ] ||
  meson setup "$build" "$top" -Db_sanitize=address,undefined -Dbuildtype=debugoptimized -Dwerror=false || exit 1
ninja -C "$build" || exit 1

# One suppression, with its reason, in tests/lsan.supp.  Those of others would hide
# every leak made through g_malloc().
export ASAN_OPTIONS=detect_leaks=1:strict_string_checks=1
export UBSAN_OPTIONS=halt_on_error=1:print_stacktrace=1
export LSAN_OPTIONS=suppressions=$top/tests/lsan.supp:print_suppressions=0
export G_SLICE=always-malloc

[ $# -gt 0 ] || set -- --no-suite gui --no-suite house --no-suite app
meson test -C "$build" --no-rebuild --timeout-multiplier 10 --num-processes "$(nproc)" --quiet --print-errorlogs "$@"
