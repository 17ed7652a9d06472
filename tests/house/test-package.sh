#!/bin/sh
# test-package.sh - what the Debian package says of itself agrees with the project.
#
# usage: test-package.sh SOURCE-ROOT
set -u

root=$(CDPATH= cd -- "$1" && pwd) || exit 1
. "$root/tests/tap.sh"
. "$root/src/packages.sh"
debian=$root/data/packaging/debian

version=$(sed -n "s/^  version: '\(.*\)',/\1/p" "$root/meson.build")
same /house/package/version "$version" "$(sed -n '1s/.*(\(.*\)).*/\1/p' "$debian/changelog")"

# Every package that the build needs, but for those that each Debian build has.
asked=$(sed -n '/^Build-Depends:/,/^Standards/p' "$debian/control" | tr ',' '\n' |
  sed 's/^Build-Depends://; s/(.*//; s/[ ]//g' | grep -v -e '^$' -e Standards -e debhelper | sort)
needed=$(printf '%s\n' $build_packages | grep -v -x -e gcc -e libc6-dev | sort)
same /house/package/build-depends "$needed" "$asked"
finish
