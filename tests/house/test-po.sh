#!/bin/sh
# test-po.sh - the translations compile, and no file with words is forgotten.
#
# usage: test-po.sh SOURCE-ROOT
set -u

root=$1
. "$root/tests/tap.sh"
cd "$root" || exit 1

for language in $(grep -v '^#' po/LINGUAS); do
  check "/house/po/$language-compiles" msgfmt --check -o /dev/null "po/$language.po"
  check "/house/po/$language-knows-its-plurals" grep -q '^"Plural-Forms: nplurals=' "po/$language.po"
done

# with_words ROOT: the files of that tree that hold a string to translate.
with_words ()
{
  (
    cd "$1" || exit 1
    {
      find src -name '*.[ch]' -exec grep -lE \
        '(^|[^A-Za-z0-9_])(_|N_|C_|NC_|Q_|g?ngettext|g_dngettext|g_dgettext|g_dpgettext2?)[[:space:]]*\("' {} +
      find src -name '*.[ch]' -exec grep -lE '(^|[^A-Za-z0-9_])(ngettext|C_) \($' {} +
      find ui -name '*.ui' -exec grep -l 'translatable="\(yes\|true\|1\)"' {} +
      find data -maxdepth 1 -name '*.in'
    } 2>/dev/null | LC_ALL=C sort -u
  )
}

listed=$(grep -v '^#' po/POTFILES)
same /house/po/potfiles-sorted "$(printf '%s\n' "$listed" | LC_ALL=C sort -u)" "$listed"
same /house/po/potfiles-exist "" \
  "$(printf '%s\n' "$listed" | while read -r file; do [ -f "$file" ] || echo "$file"; done)"
same /house/po/potfiles-complete "" "$(with_words . | while read -r file; do
    printf '%s\n' "$listed" | grep -qxF "$file" || echo "$file"
  done)"

# The finder itself, on a small tree.
tree=$(mktemp -d) || exit 1
trap 'rm -rf "$tree"' EXIT
mkdir -p "$tree/src/core" "$tree/ui" "$tree/data"
echo '  return _("Eggs");' > "$tree/src/core/a.c"
echo '  text = ngettext ("%d egg", "%d eggs", n);' > "$tree/src/core/b.c"
echo '  return C_("short", "Eggs");' > "$tree/src/core/c.c"
echo '  return stead_eggs_("no words");' > "$tree/src/core/d.c"
echo '<property name="label" translatable="yes">Eggs</property>' > "$tree/ui/a.ui"
echo '<property name="label">12</property>' > "$tree/ui/b.ui"
echo 'Name=Steading' > "$tree/data/a.desktop.in"
same /house/po/finder-finds 'data/a.desktop.in src/core/a.c src/core/b.c src/core/c.c ui/a.ui' \
  "$(with_words "$tree" | tr '\n' ' ' | sed 's/ $//')"

finish
