#!/bin/sh
# test-places.sh - every place in six variants: it opens, each control has a name,
# and the program complains of nothing.
#
# usage: test-places.sh PROGRAM FOLDER
#
# The pictures stay in FOLDER, for the eye.
set -u

here=$(CDPATH= cd -- "$(dirname -- "$0")" && pwd) || exit 1
program=$1
folder=$2
. "$here/../tap.sh"

work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT

check /gui/places/demo-farm "$program" --demo "$work/demo.steading"
for variant in light dark small-light small-dark contrast large-text; do
  check "/gui/places/$variant" env SHOTS_ONLY=$variant \
    sh "$here/shots.sh" "$program" "$work/demo.steading" "$folder"
done
finish
