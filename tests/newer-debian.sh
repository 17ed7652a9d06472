#!/bin/sh
# newer-debian.sh - build and test what is committed on a newer Debian, with gcc and with clang.
#
#   sh tests/newer-debian.sh                     # trixie: all but the window tests
#   sh tests/newer-debian.sh trixie gui-day ...  # and the window tests named
#   COMPILERS=clang sh tests/newer-debian.sh     # with one compiler only
#
# Needs root, for a root folder of its own (build-newer/SUITE, kept for the next run).
# Packages come from where this machine gets its own.  Warnings are errors there too.
set -u

top=$(CDPATH= cd -- "$(dirname -- "$0")/.." && pwd) || exit 1
suite=${1:-trixie}
[ $# -eq 0 ] || shift
root=$top/build-newer/$suite
export COMPILERS="${COMPILERS:-gcc clang}"

. "$top/src/packages.sh"
install_missing debootstrap git || exit 1

# A folder is whole only when its mark is there: a start that was cut off begins anew.
if [ ! -f "$root/root.ready" ]; then
  mirror=$(apt-get indextargets --format '$(SITE)' 'Created-By: Packages' 'Origin: Debian' | head -n 1)
  rm -rf "$root" && mkdir -p "$root" || exit 1
  debootstrap --variant=minbase "$suite" "$root" "$mirror" || exit 1
  : > "$root/root.ready"
fi

# What was built there before is built on.
[ -d "$root/srv/steading/.git" ] || git init --quiet "$root/srv/steading" || exit 1
git -C "$root/srv/steading" fetch --quiet "$top" HEAD &&
  git -C "$root/srv/steading" reset --quiet --hard FETCH_HEAD || exit 1

cat > "$root/srv/build.sh" <<'BUILD'
set -u
cd /srv/steading || exit 1
export LC_ALL=C.UTF-8 DEBIAN_FRONTEND=noninteractive
# No bytes are synced for a root that can be made again.
echo 'force-unsafe-io' > /etc/dpkg/dpkg.cfg.d/fast
. src/packages.sh
install_missing $build_packages $run_packages $test_packages clang lld git ca-certificates locales || exit 1
localedef -i en_US -f UTF-8 en_US.UTF-8 || exit 1   # see tests/meson.build
localedef -i he_IL -f UTF-8 he_IL.UTF-8 || exit 1   # see tests/gui/test_languages.py
echo "Debian $(cat /etc/debian_version), GTK $(pkg-config --modversion gtk4)," \
     "GLib $(pkg-config --modversion glib-2.0), $(gcc --version | head -n 1), $(clang --version | head -n 1)"
failed=0
for compiler in $COMPILERS; do
  build=build-$compiler
  [ -f $build/build.ninja ] || CC=$compiler meson setup $build -Dwerror=true -Dc_link_args=-fuse-ld=lld || exit 1
  ninja -C $build || { echo "$compiler: the build fails"; failed=1; continue; }
  echo "$compiler: built without a warning"
  meson test -C $build --no-rebuild --no-suite gui --timeout-multiplier 3 --quiet || failed=1
  [ $# -eq 0 ] || meson test -C $build --no-rebuild --timeout-multiplier 3 --quiet "$@" || failed=1
  echo "$compiler: $(python3 tests/count.py $build/meson-logs/testlog.json | tail -n 1)"
done
exit $failed
BUILD

# A space of mounts of its own ends with the command, however that ends.
exec unshare --mount --fork sh -c '
  root=$1; shift
  mount -t proc proc "$root/proc" && mount --rbind /dev "$root/dev" && mount --rbind /sys "$root/sys" || exit 1
  cp /etc/resolv.conf "$root/etc/resolv.conf"
  exec chroot "$root" env -i HOME=/root PATH=/usr/sbin:/usr/bin:/sbin:/bin TERM=dumb \
    COMPILERS="$COMPILERS" sh /srv/build.sh "$@"
' sh "$root" "$@"
