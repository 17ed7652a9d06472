#!/bin/sh
# access.sh - everything about use by everyone, in one command: keys alone, names and
# roles, contrast, text of twice the size, more contrast.
#
# usage: access.sh [BUILD]
#
# BUILD is a build folder; the default is build.  Prints what each test says, and a line
# with the sums.
set -u

here=$(CDPATH= cd -- "$(dirname -- "$0")" && pwd) || exit 1
build=${1:-$here/../build}
exec meson test -C "$build" --print-errorlogs house-contrast house-screens draw-palette app-ui app-table \
  gui-keyboard gui-keyboard_work gui-shell gui-places
