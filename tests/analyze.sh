#!/bin/sh
# analyze.sh - static analysis: cppcheck over all of src, and GCC's analyzer over core and store.
#
#   sh tests/analyze.sh              # both
#   sh tests/analyze.sh cppcheck     # or gcc
#
# Nothing may be found.  What is known to be no fault stands in tests/analyze.supp, each
# with its reason; nothing is passed over in the code itself.
set -u

top=$(CDPATH= cd -- "$(dirname -- "$0")/.." && pwd) || exit 1
build=$top/build-analyze
known=$top/tests/analyze.supp
failed=0

look_with_cppcheck ()
{
  command -v cppcheck >/dev/null || { echo "cppcheck is not installed." >&2; return 1; }
  found=$(cd "$top" && cppcheck -j "$(nproc)" --std=c17 --enable=warning,performance,portability --library=gtk \
            -I src -q --suppress=missingIncludeSystem --suppressions-list="$known" \
            --template='{file}:{line}: {id}: {message}' src 2>&1 | sort -u)
  [ -z "$found" ] || printf '%s\n' "$found"
  echo "cppcheck: $(find "$top/src" -name '*.c' | wc -l) files, $(printf '%s' "$found" | grep -c .) findings"
  [ -z "$found" ]
}

# A file whose object is there already is not looked at again: the findings stand in the log, those
# of before a mend too.  Remove build-analyze to be told of the present ones alone.
look_with_gcc ()
{
  log=$build/findings.log
  [ -f "$build/build.ninja" ] ||
    CC=gcc meson setup "$build" "$top" -Dbuildtype=debugoptimized -Dwerror=false -Dc_args=-fanalyzer >/dev/null || return 1
  ninja -C "$build" src/core/libstead-core.a src/store/libstead-store.a >> "$log" 2>&1 || return 1
  found=$(grep -E 'warning: .*\[-Wanalyzer' "$log" | sed 's|^[./]*src/|src/|' | sort -u |
            grep -v -E "$(sed -n 's/^#gcc //p' "$known" | paste -s -d '|' | grep . || echo '^$')")
  [ -z "$found" ] || printf '%s\n' "$found"
  echo "gcc -fanalyzer: core and store, $(printf '%s' "$found" | grep -c .) findings"
  [ -z "$found" ]
}

case ${1:-both} in
  cppcheck) look_with_cppcheck || failed=1 ;;
  gcc) look_with_gcc || failed=1 ;;
  *) look_with_cppcheck || failed=1; look_with_gcc || failed=1 ;;
esac
exit $failed
