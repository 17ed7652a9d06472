#!/bin/sh
# test-desktop.sh - what the desktop is told about the program is valid.
#
# usage: test-desktop.sh SOURCE-ROOT BUILD-DATA PROGRAM
set -u

root=$1
built=$2
program=$3
id=farm.steading.Steading
. "$root/tests/tap.sh"

work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
export LC_ALL=C.UTF-8

# Desktop entry, metainfo, schema, man page.
check /house/desktop/entry desktop-file-validate "$built/$id.desktop"
check /house/desktop/entry-in-spanish grep -q '^Comment\[es\]=' "$built/$id.desktop"
# There is no page about the program on the web that could be named; older checkers do not ask for one.
valid_metainfo ()
{
  appstreamcli validate --no-net --no-color --override=url-homepage-missing=info "$1" ||
    appstreamcli validate --no-net --no-color "$1"
}
check /house/desktop/metainfo valid_metainfo "$built/$id.metainfo.xml"
check /house/desktop/metainfo-in-spanish grep -q '<summary xml:lang="es">' "$built/$id.metainfo.xml"
check /house/desktop/schema glib-compile-schemas --strict --dry-run "$root/data"
check /house/desktop/schema-usable-from-the-build \
  gsettings --schemadir "$built" range $id color-scheme

# man reports on standard error and succeeds all the same.
same /house/desktop/man-page "" \
  "$(man --warnings -E UTF-8 -l -Tutf8 -Z "$root/data/steading.1" 2>&1 >/dev/null)"

# The release is the version that is being built.
version=$(sed -n "s/^ *version: '\([^']*\)'.*/\1/p" "$root/meson.build" | head -n 1)
check /house/desktop/release-is-told grep -q "<release version=\"$version\"" "$built/$id.metainfo.xml"
check /house/desktop/man-tells-the-version grep -q "\"Steading $version\"" "$root/data/steading.1"

# The man page and the program tell of the same options.
told=$(env LANGUAGE=en "$program" --help | grep -oE '^ .*--[a-z-]+' | grep -oE -e '--[a-z-]+' | sort -u)
written=$(sed 's/\\-/-/g' "$root/data/steading.1" | sed -n '/^.SH OPTIONS/,/^.SH EXIT/p' |
  grep -oE '^\.(B|BI|BR) .*' | grep -oE -e '--[a-z-]+' | sort -u)
same /house/desktop/man-tells-the-options "$told" "$written"

# Every XML file is well formed; every screen follows GTK's own grammar.
find "$root/data" "$root/ui" "$root/icons" -type f \
  \( -name '*.xml' -o -name '*.xml.in' -o -name '*.ui' -o -name '*.svg' \) > "$work/xml"
check /house/desktop/well-formed xargs -d '\n' xmllint --noout --nonet < "$work/xml"
grep '\.ui$' "$work/xml" > "$work/ui"
grammar=/usr/share/gtk-4.0/gtk4builder.rng
if [ -s "$work/ui" ] && [ -f $grammar ]; then
  check /house/desktop/screens-follow-the-grammar \
    xargs -d '\n' xmllint --noout --nonet --relaxng $grammar < "$work/ui"
fi

# MIME type, in a private database beside the system's.
mkdir -p "$work/share/mime/packages"
cp "$built/$id.xml" "$work/share/mime/packages/"
check /house/mime/database env XDG_DATA_HOME="$work/share" update-mime-database -V "$work/share/mime"

# database FILE ID: an SQLite file with that application id.
database ()
{
  sqlite3 "$1" "PRAGMA application_id = $2; CREATE TABLE a (b);"
}

type_of ()
{
  env XDG_DATA_HOME="$work/share" GIO_USE_VFS=local gio info -a standard::content-type "$1" |
    sed -n 's/^ *standard::content-type: //p'
}

database "$work/ending.steading" $((0x53544544))
database "$work/without" $((0x53544544))
database "$work/other" $((0x53544545))
database "$work/plain.db" 0
printf 'not a database' > "$work/text"
same /house/mime/bytes 53544544 "$(od -An -tx1 -j68 -N4 "$work/without" | tr -d ' ')"
same /house/mime/farm-with-ending application/x-steading-farm "$(type_of "$work/ending.steading")"
same /house/mime/farm-without-ending application/x-steading-farm "$(type_of "$work/without")"
same /house/mime/other-database application/vnd.sqlite3 "$(type_of "$work/other")"
same /house/mime/plain-database application/vnd.sqlite3 "$(type_of "$work/plain.db")"
same /house/mime/text text/plain "$(type_of "$work/text")"

finish
