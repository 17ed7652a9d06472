#!/bin/sh
# run.sh - the whole suite from any folder, without a screen.
#
# Installs what is missing, builds with warnings as errors, runs every test
# (the window tests last) and prints the sum as its last line.
# With --coverage: what the tests without a window reach, by layer, instead.
set -u

top=$(CDPATH= cd -- "$(dirname -- "$0")/.." && pwd) || exit 1
build=$top/build-test
log=$build/meson-logs/testlog.json
[ "${1-}" != --coverage ] || exec sh "$top/tests/coverage.sh"
cores=$(nproc)

give_up ()
{
  echo "$1" >&2
  echo "0 passed, 1 failed"
  exit 1
}

. "$top/src/packages.sh"
install_missing $build_packages $run_packages $test_packages ||
  give_up "The packages that the tests need are not there."

# A build folder of another Meson, or a broken one, is made anew.
if [ -f "$build/build.ninja" ] && ! ninja -C "$build" -n build.ninja >/dev/null 2>&1; then
  rm -rf "$build"
fi
[ -f "$build/build.ninja" ] ||
  meson setup "$build" "$top" -Dwerror=true ||
  give_up "Meson cannot set up the build."
ninja -C "$build" -j "$cores" || give_up "The build fails."

rm -f "$log"
# A limit of time finds what hangs; a slow machine is no fault.
meson test -C "$build" --no-rebuild --num-processes "$cores" --timeout-multiplier 3 --quiet
[ -f "$log" ] || give_up "No test ran."
exec python3 "$top/tests/count.py" "$log"
