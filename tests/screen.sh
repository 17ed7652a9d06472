#!/bin/sh
# screen.sh - one command with a screen of its own, and its exit status.
#
# usage: screen.sh COMMAND [ARGUMENT...]
#
# GUI_SIZE is the size of the screen.  The server itself finds a free display
# number, so that any number of these can run side by side; tools that look for
# one beforehand now and then find the same one twice.
set -u

work=$(mktemp -d) || exit 1
server=
leave ()
{
  [ -z "$server" ] || kill "$server" 2>/dev/null
  rm -rf "$work"
}
trap leave EXIT
trap 'exit 130' INT TERM

mkfifo "$work/number" || exit 1
Xvfb -displayfd 3 -screen 0 "${GUI_SIZE:-1366x768}x24" -nolisten tcp -noreset \
  3> "$work/number" > "$work/log" 2>&1 &
server=$!
if ! read -r number < "$work/number"; then
  echo "screen.sh: no screen could be made:" >&2
  cat "$work/log" >&2
  exit 1
fi

env -u WAYLAND_DISPLAY -u XAUTHORITY DISPLAY=":$number" "$@"
