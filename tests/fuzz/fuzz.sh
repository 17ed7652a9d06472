#!/bin/sh
# fuzz.sh - each fuzz target under libFuzzer, with the sanitizers.
#
#   sh tests/fuzz/fuzz.sh [SECONDS [TARGET...]]     # 60 seconds each; all by default
#
# text: amounts, money, days; line: the one-line entry; import: tables; farm: a farm file;
# label: the label of a pack; paper: every document, of words from the farm file.
# New inputs go to build-fuzz/corpus/TARGET.  An input that breaks something is left
# in build-fuzz: put it among the seeds of its target, and mend the program.
set -u

top=$(CDPATH= cd -- "$(dirname -- "$0")/../.." && pwd) || exit 1
build=$top/build-fuzz
seconds=${1:-60}
[ $# -eq 0 ] || shift
[ $# -gt 0 ] || set -- text line import farm label paper

command -v clang >/dev/null || { echo "clang is not installed." >&2; exit 1; }
[ -f "$build/build.ninja" ] ||
  CC=clang meson setup "$build" "$top" -Db_sanitize=address,undefined -Doptimization=1 -Db_lundef=false -Dwerror=false \
    -Dc_args='-DSTEAD_LIBFUZZER -fsanitize=fuzzer-no-link' || exit 1

failed=0
for target in "$@"; do
  ninja -C "$build" "tests/fuzz/fuzz-$target" || exit 1
  corpus=$build/corpus/$target
  mkdir -p "$corpus"
  longest=2
  case $target in
    text | line)
      # A seed file holds a case a line.
      n=0
      (cd "$top/tests/fuzz/seeds" && cat amounts.txt days.txt lines.txt money.txt) | while IFS= read -r line; do
        n=$((n + 1))
        printf '%s' "$line" > "$corpus/seed-$n"
      done ;;
    import) cp "$top"/tests/fixtures/import/*.csv "$corpus/" ;;
    farm) cp "$top"/tests/fixtures/version-*.steading "$corpus/" ;;
    # A label is laid out in many sizes, a whole paper is made; and it is the time of the clock that counts.
    label) cp "$top"/tests/fuzz/seeds/label-*.txt "$corpus/"; longest=60 ;;
    paper) cp "$top"/tests/fuzz/seeds/words.txt "$corpus/"; longest=120 ;;
  esac
  echo "fuzz-$target: $seconds s"
  (cd "$build" && G_SLICE=always-malloc G_DEBUG=fatal-warnings LC_ALL=C.UTF-8 TZ=UTC ASAN_OPTIONS=detect_leaks=0 "tests/fuzz/fuzz-$target" \
     -max_total_time="$seconds" -timeout=$longest -rss_limit_mb=4096 -print_final_stats=1 \
     -artifact_prefix="$build/found-$target-" "$corpus" 2>&1 | tail -n 12) || failed=1
  ! ls "$build"/found-"$target"-* >/dev/null 2>&1 || { echo "fuzz-$target found something: $build/found-$target-*"; failed=1; }
done
exit $failed
