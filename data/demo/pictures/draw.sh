#!/bin/sh
# draw.sh - makes the pictures of the demo farm from their drawings.
#
# usage: draw.sh
#
# Everybody on them is invented, and drawn.  It needs rsvg-convert and ImageMagick; the
# pictures are kept beside the drawings, so that a build needs neither.
set -eu

here=$(CDPATH= cd -- "$(dirname -- "$0")" && pwd)
for name in eggs stall pen; do
  rsvg-convert --width 800 "$here/$name.svg" | convert png:- -strip -quality 80 "$here/$name.jpg"
done
