#!/bin/sh
# languages.sh - everything about languages in one command: complete translations, names
# that are quoted, the help, sentences in Spanish, a language that nobody speaks, from
# right to left, numbers by locale.
#
# usage: languages.sh [BUILD]
#
# BUILD is a build folder; the default is build.  Prints what each test says, and a line
# with the sums.
set -u

here=$(CDPATH= cd -- "$(dirname -- "$0")" && pwd) || exit 1
build=${1:-$here/../build}
spanish=$(meson test -C "$build" --list --no-rebuild 2> /dev/null | sed -n 's/.* \([^ ]*-es\)$/\1/p')
# shellcheck disable=SC2086  # names of tests, one a word
exec meson test -C "$build" --print-errorlogs house-strings house-quotes house-po core-locale answer-guide \
  gui-languages $spanish
