#!/bin/sh
# build.sh - the Debian package of what is committed.
#
#   sh data/packaging/build.sh [FOLDER]     # where it goes; the default is build-package
#
# Builds in a folder of its own, looks the package over with lintian, and says where it
# is.  The tests are not run here: tests/run.sh runs them.
set -u

top=$(CDPATH= cd -- "$(dirname -- "$0")/../.." && pwd) || exit 1
out=${1:-$top/build-package}

. "$top/src/packages.sh"
install_missing $build_packages $run_packages debhelper dpkg-dev fakeroot lintian || exit 1

mkdir -p "$out" && out=$(CDPATH= cd -- "$out" && pwd) || exit 1
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
mkdir "$work/steading" || exit 1
git -C "$top" archive HEAD | tar -x -C "$work/steading" || exit 1
mv "$work/steading/data/packaging/debian" "$work/steading/debian" || exit 1

# The time of the commit, not of the build: the same source gives the same package.
SOURCE_DATE_EPOCH=$(git -C "$top" log -1 --format=%ct)
export SOURCE_DATE_EPOCH
(cd "$work/steading" && dpkg-buildpackage --no-sign --build=binary) > "$out/build.log" 2>&1 || {
  tail -n 20 "$out/build.log"
  echo "The package cannot be built: $out/build.log" >&2
  exit 1
}
cp "$work"/*.deb "$out/" || exit 1
lintian --fail-on error "$out"/steading_*.deb || exit 1
for package in "$out"/steading_*.deb; do
  echo "$(sha256sum < "$package" | cut -c1-64)  $package"
done
