#!/bin/sh
# test-registered.sh SOURCE: a test program that no build file names is never run.
set -u
cd "$1/tests" || exit 1

n=0
missing=0
for file in */test-*.c */test-*.py */test-*.sh */test_*.py; do
  folder=${file%%/*}
  topic=${file##*/test[-_]}
  topic=${topic%.*}
  n=$((n + 1))
  # A list of topics, or the file by its name.
  if ! grep -q -e "'$topic'" -e "${file##*/}" "$folder/meson.build"; then
    echo "# tests/$file is in no list of tests/$folder/meson.build"
    missing=$((missing + 1))
  fi
done
[ "$n" -gt 100 ] && echo "ok 1 /house/registered/there-are-tests" || echo "not ok 1 /house/registered/there-are-tests # $n"
[ "$missing" -eq 0 ] && echo "ok 2 /house/registered/each-is-run" || echo "not ok 2 /house/registered/each-is-run"
echo "1..2"
