#!/bin/sh
# run.sh - what may go wrong outside the program, at length; prints its figures.
#
#   sh tests/fault/run.sh kill [N]      # killed N times amid work of every kind (2,000)
#   sh tests/fault/run.sh disk          # the disk fails, or the power goes, at every single moment
#   sh tests/fault/run.sh damage [N]    # N farms with flipped bits or cut off (5,000), and those made to do harm
#
# The suite runs the same in short: 100 kills, moments that are sampled, 150 farms.
# A round that failed is made again with its seed: "random seed" in the log that is named.
set -u

top=$(CDPATH= cd -- "$(dirname -- "$0")/../.." && pwd) || exit 1
build=${STEAD_BUILD:-$top/build-fault}

case ${1:-} in
  kill) topics='kill work' rounds=${2:-2000} ;;
  disk) topics='disk writes memory' rounds=1 ;;
  damage) topics='damage hostile' rounds=${2:-5000} ;;
  *) sed -n 's/^# \{0,1\}//; 3,5p' "$0" >&2; exit 2 ;;
esac

[ -f "$build/build.ninja" ] || meson setup "$build" "$top" -Dwerror=false >/dev/null || exit 1
ninja -C "$build" $(printf 'tests/fault/test-fault-%s ' $topics) >/dev/null || exit 1

failed=0
for topic in $topics; do
  log=$build/fault-$topic.log
  began=$(date +%s)
  env STEAD_ROUNDS="$rounds" G_TEST_SRCDIR="$top/tests" G_DEBUG=fatal-warnings LC_ALL=C.UTF-8 TZ=UTC \
    "$build/tests/fault/test-fault-$topic" > "$log" 2>&1 || failed=1
  # Notes that say what was counted; those on single farms and what was said to the person are left out.
  grep -E '^# .*(kills;|acts in|moments up to|refused,|slowest|places hold)' "$log" | sed 's/^# /  /'
  echo "$topic: $(grep -c '^ok ' "$log") passed, $(grep -cE '^(not ok |Bail out)' "$log") failed," \
       "$(($(date +%s) - began)) s ($log)"
done
exit $failed
