#!/bin/sh
# test-install.sh - an installation puts everything where a desktop looks for it.
#
# usage: test-install.sh SOURCE-ROOT BUILD-ROOT PREFIX
set -u

root=$1
build=$2
prefix=$3
id=farm.steading.Steading
. "$root/tests/tap.sh"

work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT

check /house/install/installs env DESTDIR="$work" meson install -C "$build" --no-rebuild --quiet

share=$work$prefix/share
for file in \
  "applications/$id.desktop" \
  "glib-2.0/schemas/$id.gschema.xml" \
  "icons/hicolor/scalable/apps/$id.svg" \
  "icons/hicolor/symbolic/apps/$id-symbolic.svg" \
  "locale/es/LC_MESSAGES/steading.mo" \
  "man/man1/steading.1" \
  "metainfo/$id.metainfo.xml" \
  "mime/packages/$id.xml"
do
  check "/house/install/$(basename "$file")" test -s "$share/$file"
done

# The program, which says the version that was built.
version=$(sed -n "s/^ *version: '\([^']*\)'.*/\1/p" "$root/meson.build" | head -n 1)
same /house/install/program-tells-its-version "steading $version" \
  "$(env LC_ALL=C.UTF-8 LANGUAGE=en "$work$prefix/bin/steading" --version)"

# Nothing else: what is bundled is not strewn over the system.
same /house/install/number-of-files 8 "$(find "$work" -type f -not -path '*/bin/*' | wc -l)"

# The installed entry names an icon and a program by the names that were installed.
check /house/install/entry-names-the-icon grep -qx "Icon=$id" "$share/applications/$id.desktop"
finish
