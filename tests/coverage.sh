#!/bin/sh
# coverage.sh - lines and branches that the tests without a window reach, by layer.
#
#   sh tests/coverage.sh     # or: sh tests/run.sh --coverage
#
# The goal: core, store, answer and paper at 95 % of lines and 85 % of branches.
# Prints a line a layer, and the files that are farthest from the goal.
set -u

top=$(CDPATH= cd -- "$(dirname -- "$0")/.." && pwd) || exit 1
build=$top/build-coverage

. "$top/src/packages.sh"
install_missing $build_packages $run_packages $test_packages gcovr || exit 1

[ -f "$build/build.ninja" ] || meson setup "$build" "$top" -Db_coverage=true -Dwerror=false || exit 1
ninja -C "$build" || exit 1
find "$build" -name '*.gcda' -delete
meson test -C "$build" --no-rebuild --no-suite gui --timeout-multiplier 5 --num-processes "$(nproc)" --quiet
failed=$?

gcovr --root "$top" --filter "$top/src/" --exclude-unreachable-branches --exclude-throw-branches \
      --json-summary "$build/coverage.json" "$build" || exit 1
python3 "$top/tests/coverage.py" "$build/coverage.json" || exit 1
exit $failed
