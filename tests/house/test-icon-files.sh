#!/bin/sh
# test-icon-files.sh - every symbolic icon keeps the rules that make it recolour.
#
# usage: test-icon-files.sh SOURCE-ROOT
set -u

root=$1
. "$root/tests/tap.sh"
cd "$root/icons" || exit 1

work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT

# lawful FILE: 16×16, one ink, fills only, nothing outside.
lawful ()
{
  grep -q 'viewBox="0 0 16 16"' "$1" || { echo "$1 is not 16×16"; return 1; }
  ! grep -qiE 'stroke|style|<image|<script|href|gradient' "$1" || { echo "$1: fills only"; return 1; }
  [ "$(grep -oE 'fill="[^"]*"' "$1" | sort -u)" = 'fill="#2e3436"' ] ||
    { echo "$1 has another ink"; return 1; }
}

# legible FILE: at 16 px it leaves between a twentieth and three quarters inked.
legible ()
{
  rsvg-convert -w 16 -h 16 "$1" -o "$work/icon.png" || return 1
  inked=$(convert "$work/icon.png" -alpha extract -format '%[fx:int(1000*mean)]' info:) || return 1
  [ "$inked" -ge 50 ] && [ "$inked" -le 750 ] || { echo "$1: $inked of 1000 inked"; return 1; }
}

for file in hicolor/symbolic/apps/*.svg; do
  name=$(basename "$file" .svg)
  check "/house/icon/$name-lawful" lawful "$file"
  check "/house/icon/$name-legible" legible "$file"
  check "/house/icon/$name-bundled" grep -qF ">symbolic/apps/$name.svg</file>" \
    steading-icons.gresource.xml
done

# What breaks the rules is found.
echo '<svg viewBox="0 0 16 16"><path stroke="#2e3436" d="M1 1L2 2"/></svg>' > "$work/stroke.svg"
echo '<svg viewBox="0 0 24 24"><path fill="#2e3436" d="M1 1L2 2"/></svg>' > "$work/size.svg"
echo '<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 16 16"/>' > "$work/blank.svg"
refuse /house/icon/stroke-found lawful "$work/stroke.svg"
refuse /house/icon/size-found lawful "$work/size.svg"
refuse /house/icon/blank-found legible "$work/blank.svg"
finish
