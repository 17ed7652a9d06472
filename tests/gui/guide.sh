#!/bin/sh
# guide.sh - the pictures of the help, made anew from the real screens.
#
# usage: guide.sh PROGRAM
#
# Run it when a place has changed its face, look at what came, and commit it:
# data/help/LANGUAGE/PLACE.png, one for each place, of at most 256 colors.
set -u

here=$(CDPATH= cd -- "$(dirname -- "$0")" && pwd) || exit 1
program=$1
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
status=0
for language in en es; do
  LC_ALL=C.UTF-8 LANGUAGE=$language "$program" --demo "$work/$language.steading" || exit 1
  for size in 1024x600 1366x768; do
    places='today raise make check sell fund keep show'
    [ $size = 1024x600 ] || places=price
    GUI_SIZE=$size GUI_LANGUAGE=$language sh "$here/run.sh" /usr/bin/python3 "$here/guide.py" \
      "$program" "$work/$language.steading" "$here/../../data/help/$language" $places || status=1
  done
done
exit $status
