#!/bin/sh
# shots.sh - pictures of every place in six variants, to look at.
#
# usage: shots.sh PROGRAM FARM FOLDER [PLACE...]
#
# Saves FOLDER/VARIANT-PLACE.png.  Run it by hand, or from the tests into the
# build folder; it fails if the window does not open, a place has a control
# without a name, the window is cut off, or the program complains.  SHOTS_ONLY names
# one variant.
set -u

here=$(CDPATH= cd -- "$(dirname -- "$0")" && pwd) || exit 1
program=$1
farm=$2
folder=$3
shift 3
mkdir -p "$folder" || exit 1

status=0
shoot ()
{
  variant=$1
  shift
  [ "${SHOTS_ONLY:-$variant}" = "$variant" ] || return 0
  GUI_SIZE=$size GUI_THEME=$theme GUI_FONT=$font \
    sh "$here/run.sh" /usr/bin/python3 "$here/shots.py" \
    "$program" "$farm" "$folder/$variant" "$@" || status=1
}

font='DejaVu Sans 10'
size=1366x768 theme=Default          shoot light "$@"
size=1366x768 theme=Default:dark     shoot dark "$@"
size=1024x600 theme=Default          shoot small-light "$@"
size=1024x600 theme=Default:dark     shoot small-dark "$@"
size=1366x768 theme=HighContrast     shoot contrast "$@"
font='DejaVu Sans 20'
size=1366x768 theme=Default          shoot large-text "$@"
exit $status
