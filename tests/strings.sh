#!/bin/sh
# strings.sh - every translation is complete against the sources as they are now.
#
# usage: strings.sh [ROOT]
#
# Extracts a fresh template from the files of po/POTFILES, merges each language
# of po/LINGUAS with it in a folder of its own, and counts what is not translated
# or only guessed (TAP, one case a language).  Nothing in the tree is changed.
set -u

here=$(CDPATH= cd -- "$(dirname -- "$0")" && pwd) || exit 1
root=${1:-$here/..}
. "$here/tap.sh"
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
export LC_ALL=C.UTF-8

# The words that mark a string are those of Meson's preset "glib".
xgettext --directory="$root" --files-from="$root/po/POTFILES" --output="$work/fresh.pot" \
  --package-name=steading --from-code=UTF-8 --add-comments=Translators: \
  --keyword=_ --keyword=N_ --keyword=C_:1c,2 --keyword=NC_:1c,2 \
  --keyword=g_dcgettext:2 --keyword=g_dngettext:2,3 --keyword=g_dpgettext2:2c,3 \
  2> "$work/xgettext.log" || {
    sed 's/^/# /' "$work/xgettext.log"
    echo "Bail out! The template cannot be extracted."
    exit 1
  }

# unfinished FILE: the messages that are not translated, or only guessed.
unfinished ()
{
  msgattrib --untranslated --no-obsolete --no-wrap "$1"
  msgattrib --only-fuzzy --no-obsolete --no-wrap "$1"
}

for language in $(grep -v '^#' "$root/po/LINGUAS"); do
  check "/house/strings/$language-merges" \
    msgmerge --quiet --no-fuzzy-matching --output-file="$work/$language.po" \
      "$root/po/$language.po" "$work/fresh.pot"
  same "/house/strings/$language-complete" "" "$(unfinished "$work/$language.po" 2>&1)"
done
finish
