#!/bin/sh
# test-start.sh - the first command that a visitor runs, with every tool played by a stand-in.
#
# usage: test-start.sh SOURCE-ROOT
#
# Nothing is installed, built or shown: the stand-ins write down how they were
# called, and the test reads that.
set -u

root=$1
. "$root/tests/tap.sh"

work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
calls=$work/calls
tools=$work/tools
mkdir -p "$work/house/src" "$work/home" "$tools"
: > "$work/unfinished"
cp "$root/src/start.sh" "$root/src/packages.sh" "$work/house/src/"

# tool NAME: makes a stand-in of what is on standard input.
tool ()
{
  { echo '#!/bin/sh'; echo "echo \"$1 \$*\" >> '$calls'"; cat; } > "$tools/$1"
  chmod +x "$tools/$1"
}

# Whatever is asked for is there, except what $work/missing names.
tool dpkg-query <<STANDIN
shift 3
for package; do
  grep -qxF "\$package" '$work/missing' || echo "installed \$package"
done
STANDIN
tool id <<'STANDIN'
echo "${STANDIN_UID:-0}"
STANDIN
tool sudo <<'STANDIN'
exec "$@"
STANDIN
tool apt-get < /dev/null
tool dpkg <<STANDIN
[ "\$1" != --audit ] || cat '$work/unfinished'
STANDIN
tool xdg-user-dir <<'STANDIN'
echo "$HOME"
STANDIN
tool meson <<'STANDIN'
mkdir -p "$2" && : > "$2/build.ninja"
STANDIN
tool ninja <<STANDIN
mkdir -p "\$2/src" && cp '$work/program' "\$2/src/steading"
STANDIN

# The program: makes what it is asked for.
cat > "$work/program" <<STANDIN
#!/bin/sh
echo "steading \$*" >> '$calls'
case \$1 in
  --demo) echo farm > "\$2" ;;
  --list-documents) printf 'cost-sheet\tpdf png\tWhat it costs\nflock-log\tcsv xlsx\tThe log\n' ;;
  --document) [ "\$3" = --out ] && [ -f "\$5" ] && echo "\$2" > "\$4" ;;
esac
STANDIN
chmod +x "$work/program"

# start [NAME=VALUE...]: the command, in a clean room; what it says goes to $work/said.
start ()
{
  : > "$calls"
  env -i PATH="$tools:/usr/bin:/bin" HOME="$work/home" "$@" \
    sh "$work/house/src/start.sh" > "$work/said" 2>&1
}

called () { grep -qF -- "$1" "$calls"; }
farm="$work/home/.local/share/steading/Ember Lake School Farm.steading"
papers=$work/home/.local/share/steading/steading-documents

# All packages are there, no display.
: > "$work/missing"
check  /house/start/runs start
refuse /house/start/installs-nothing-that-is-there called apt-get
check  /house/start/builds-for-release called '--buildtype=release'
check  /house/start/makes-the-farm test -f "$farm"
check  /house/start/writes-a-document test -s "$papers/cost-sheet.pdf"
check  /house/start/writes-in-a-format-that-it-has test -s "$papers/flock-log.csv"
check  /house/start/says-where grep -qF "$papers" "$work/said"
refuse /house/start/opens-no-window-without-a-display grep -qE '^steading /' "$calls"

# Again: what is there is kept.
echo mine > "$farm"
check  /house/start/runs-again start
same   /house/start/keeps-the-farm mine "$(cat "$farm")"
refuse /house/start/sets-up-once called 'meson setup'

# With a display.
check  /house/start/runs-on-x start DISPLAY=:7
check  /house/start/opens-the-window called "steading $farm"
refuse /house/start/writes-nothing-with-a-display called --document
check  /house/start/runs-on-wayland start WAYLAND_DISPLAY=wayland-7
check  /house/start/opens-the-window-on-wayland called "steading $farm"

# Packages that are missing, as root and not.
echo libgsl-dev > "$work/missing"
check  /house/start/runs-with-one-missing start
check  /house/start/installs-the-missing called \
  'apt-get -o DPkg::Lock::Timeout=300 install -y -qq --no-install-recommends libgsl-dev'
refuse /house/start/configures-nothing-that-is-finished called 'dpkg --configure'
check  /house/start/brings-the-lists-first called 'apt-get update'
refuse /house/start/installs-only-the-missing grep -qE '^apt-get .*install .* (gcc|meson)' "$calls"
refuse /house/start/root-needs-no-sudo called 'sudo '
check  /house/start/runs-as-a-person start STANDIN_UID=1000
check  /house/start/a-person-needs-sudo called 'sudo env DEBIAN_FRONTEND=noninteractive apt-get -o DPkg::Lock::Timeout=300 install'
echo 'half configured: man-db' > "$work/unfinished"
check  /house/start/runs-after-an-interruption start
check  /house/start/finishes-what-was-interrupted called 'dpkg --configure -a'
: > "$work/unfinished"

# What fails is not passed over.
printf '#!/bin/sh\nexit 1\n' > "$tools/apt-get"
refuse /house/start/tells-of-a-failed-installation start
: > "$work/missing"
printf '#!/bin/sh\nexit 1\n' > "$tools/ninja"
refuse /house/start/tells-of-a-failed-build start
finish
