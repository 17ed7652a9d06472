#!/bin/sh
# coverage.sh - lines and branches that the tests without a window reach, by layer.
#
#   sh tests/coverage.sh             # or: sh tests/run.sh --coverage
#   sh tests/coverage.sh FILE...     # then: what of these files no test reaches, line by line
#
# The goal: core, store, answer and paper at 95 % of lines and 85 % of branches.
# Prints a line a layer; what is not reached for a reason, by reason (coverage.reasons);
# and the files that are farthest from the goal.  With files, nothing is built or run:
# the last report is read again.
#
# The layers are measured by their own tests.  Those of faults and of speed say the same
# of fewer lines, take longer than all others together, and are left out.
set -u

top=$(CDPATH= cd -- "$(dirname -- "$0")/.." && pwd) || exit 1
build=$top/build-coverage
cd "$top" || exit 1

if [ $# -gt 0 ]; then
  exec python3 tests/coverage.py "$build/coverage.json" tests/coverage.reasons "$@"
fi

. "$top/src/packages.sh"
install_missing $build_packages $run_packages $test_packages gcovr || exit 1

# Without the optimizer each branch is as it was written.
[ -f "$build/build.ninja" ] ||
  meson setup "$build" "$top" -Db_coverage=true -Dbuildtype=debug -Dwerror=false || exit 1
find "$build" -name '*.gcda' -delete
meson test -C "$build" --suite core --suite store --suite answer --suite draw --suite paper \
      --timeout-multiplier 5 --num-processes "$(nproc)" --quiet
failed=$?

for layer in core store answer draw paper; do
  set -- "$@" "$build/src/$layer"
done
gcovr -j "$(nproc)" --root "$top" --filter "$top/src/" --exclude-unreachable-branches --exclude-throw-branches \
      --json "$build/coverage.json" "$@" || exit 1
python3 tests/coverage.py "$build/coverage.json" tests/coverage.reasons || exit 1
exit $failed
