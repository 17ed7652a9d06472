# packages.sh - the one list of the Debian packages that the project needs.
#
# Read it with "." from another script, then call install_missing with one or
# more of the lists.  Packages that are there cost one dpkg-query: a second run
# is fast and needs no network.

# Build the program.  (A newer Debian's libxlsxwriter-dev forgets to ask for libminizip-dev.)
build_packages='
  gcc libc6-dev meson ninja-build pkgconf gettext
  libglib2.0-dev libglib2.0-dev-bin libgtk-4-dev libgtk-4-bin
  libsqlite3-dev libgsl-dev libglpk-dev
  libxlsxwriter-dev libminizip-dev libcsv-dev libqrencode-dev libjson-glib-dev
  libxml2-utils desktop-file-utils
'

# Run it: figures and letters on screen and on paper; names hold emoji, too.
run_packages='
  fonts-dejavu-core fonts-noto-color-emoji adwaita-icon-theme shared-mime-info tzdata
'

# Test it: a private screen and bus, the validators, a second reader for each
# format that we write.
test_packages='
  xvfb xdotool x11-utils imagemagick
  dbus dbus-x11 at-spi2-core python3 python3-pyatspi gir1.2-gtk-4.0
  poppler-utils librsvg2-bin python3-openpyxl python3-scipy sqlite3
  appstream man-db groff
  libzbar-dev locales strace binutils
'

# install_missing PACKAGE...: installs those that are not there yet.
install_missing ()
{
  if ! command -v dpkg-query >/dev/null 2>&1; then
    echo "This is not a Debian system: please install these yourself, under the names used here:" >&2
    echo "  " "$@" >&2
    return 0
  fi

  missing=
  present=$(dpkg-query -W -f '${db:Status-Status} ${Package}\n' "$@" 2>/dev/null)
  for package in "$@"; do
    case "
$present
" in
      *"
installed $package
"*) ;;
      *) missing="$missing $package" ;;
    esac
  done
  [ -n "$missing" ] || return 0

  as_root=
  if [ "$(id -u)" -ne 0 ]; then
    if ! command -v sudo >/dev/null 2>&1; then
      echo "These packages are missing. As root, run:" >&2
      echo "  apt-get install --no-install-recommends$missing" >&2
      return 1
    fi
    as_root=sudo
  fi
  # An installation that was cut off stops every later one until it is finished.
  if [ -n "$(dpkg --audit 2>/dev/null)" ]; then
    echo "Finishing an installation that was interrupted."
    $as_root env DEBIAN_FRONTEND=noninteractive dpkg --configure -a
  fi
  echo "Installing:$missing"
  $as_root env DEBIAN_FRONTEND=noninteractive apt-get update -qq &&
    $as_root env DEBIAN_FRONTEND=noninteractive \
      apt-get -o DPkg::Lock::Timeout=300 install -y -qq --no-install-recommends $missing
}
