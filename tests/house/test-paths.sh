#!/bin/sh
# test-paths.sh - no file of the project tells where it was written.
#
# usage: test-paths.sh SOURCE-ROOT
set -u

root=$(CDPATH= cd -- "$1" && pwd) || exit 1
. "$root/tests/tap.sh"

# A home, a work folder, a mount: written so that this line does not match itself.
pattern='(^|[^A-Za-z0-9_.$}-])/(wor[k]|roo[t]|home/[a-z][a-z0-9_-]*|User[s]/[a-z]|mn[t]|medi[a]/[a-z])/'

# tracked ROOT: the project's files, NUL-ended; all of them where there is no git.
tracked ()
{
  git -C "$1" ls-files -z 2>/dev/null | grep -qz . &&
    git -C "$1" ls-files -z ||
    (cd "$1" && find . -type f -not -path './build*' -not -path './b-*' -not -path './.git/*' -print0)
}

# matching ROOT PATTERN: FILE:LINE of each match.
matching ()
{
  (cd "$1" && tracked . | xargs -0 -r grep -HnIE "$2" --) 2>/dev/null
}

# telling ROOT: FILE:LINE of each telling path.
telling ()
{
  matching "$1" "$pattern"
}

# The place of this very checkout, unless it is as common as a temporary folder.
here=$(dirname "$root")
own ()
{
  case $here in
    / | /tmp* | /var/tmp* | /usr* | /src | /srv | /builds) ;;
    *) matching "$root" "(^|[^A-Za-z0-9_.\$}-])$(printf '%s\n' "$here" | sed 's/[][\.*^$+?(){}|]/\\&/g')/" ;;
  esac
}

same /house/paths/none-tells "" "$(telling "$root")"
same /house/paths/not-this-checkout "" "$(own)"

tree=$(mktemp -d) || exit 1
trap 'rm -rf "$tree"' EXIT
for place in wor""k/x roo""t/x home/ann/x; do
  echo "see /$place/y" > "$tree/a"
  case $(telling "$tree") in
    *a:1:*) report yes "/house/paths/finds-${place%%/*}" ;;
    *) report no "/house/paths/finds-${place%%/*}" ;;
  esac
done
printf '%s\n' 'cd /usr/share' 'build/wor'k/x '$HOME/wor'k/ 'https://a.org/home/' > "$tree/a"
same /house/paths/lets-the-right-pass "" "$(telling "$tree")"
finish
