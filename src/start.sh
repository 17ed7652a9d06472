#!/bin/sh
# start.sh - from a fresh Debian 12 to the demo farm on screen, in one command.
#
# Installs what is missing, builds a release build and opens the demo farm.
# Without a display it writes the demo farm's documents into a folder instead.
set -eu

top=$(CDPATH= cd -- "$(dirname -- "$0")/.." && pwd)
build=$top/build-release
program=$build/src/steading

. "$top/src/packages.sh"

# Where the demo farm lives: with the person's documents, or with their data.
farm_folder ()
{
  documents=$(xdg-user-dir DOCUMENTS 2>/dev/null || true)
  if [ -d "$documents" ] && [ "$documents" != "$HOME" ] && [ -w "$documents" ]; then
    echo "$documents"
  elif [ -n "${HOME:-}" ] && mkdir -p "${XDG_DATA_HOME:-$HOME/.local/share}/steading" 2>/dev/null; then
    echo "${XDG_DATA_HOME:-$HOME/.local/share}/steading"
  else
    echo "$build"
  fi
}

# write_documents FARM FOLDER: every document of the farm, in its first format.
# Of what the farm has none, there is no document; the program says so.
write_documents ()
{
  mkdir -p "$2"
  "$program" --list-documents > "$build/documents.txt"
  while read -r name format rest; do
    [ -n "$name" ] || continue
    "$program" --document "$name" --out "$2/$name.$format" "$1" < /dev/null || true
  done < "$build/documents.txt"
  echo "There is no display here. The demo farm's documents are in:"
  echo "  $2"
}

install_missing $build_packages $run_packages

[ -f "$build/build.ninja" ] ||
  meson setup "$build" "$top" --buildtype=release -Dwerror=false
ninja -C "$build" -j "$(nproc)" \
  src/steading data/gschemas.compiled po/es/LC_MESSAGES/steading.mo

folder=$(farm_folder)
farm="$folder/Ember Lake School Farm.steading"
[ -e "$farm" ] || "$program" --demo "$farm"

if [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ]; then
  exec "$program" "$farm"
fi
write_documents "$farm" "$folder/steading-documents"
