#!/bin/sh
# run.sh - one command with a screen, a bus, a home and settings of its own.
#
# usage: run.sh COMMAND [ARGUMENT...]
#
# The environment chooses the variant:
#   GUI_SIZE    1366x768, 1024x600
#   GUI_THEME   Default, Default:dark, HighContrast, HighContrast:dark
#   GUI_FONT    "DejaVu Sans 10"; at 20 everything is twice as large
#   GUI_LOCALE  C.UTF-8
#   GUI_LANGUAGE  es for Spanish words
#   GUI_LIMIT   seconds until the command is stopped
set -u

here=$(CDPATH= cd -- "$(dirname -- "$0")" && pwd) || exit 1
home=$(mktemp -d) || exit 1
trap 'rm -rf "$home"' EXIT
mkdir -p "$home/config/gtk-4.0" "$home/run" && chmod 700 "$home/run"
printf '[Settings]\ngtk-enable-animations=0\ngtk-cursor-blink=0\ngtk-font-name=%s\n' "${GUI_FONT:-DejaVu Sans 10}" \
  > "$home/config/gtk-4.0/settings.ini"

env HOME="$home" XDG_CONFIG_HOME="$home/config" XDG_DATA_HOME="$home/data" \
    XDG_CACHE_HOME="$home/cache" XDG_RUNTIME_DIR="$home/run" TZ=UTC \
    LC_ALL="${GUI_LOCALE:-C.UTF-8}" LANGUAGE="${GUI_LANGUAGE:-en}" \
    GTK_THEME="${GUI_THEME:-Default}" GDK_BACKEND=x11 GSK_RENDERER=cairo GTK_A11Y=atspi \
    GTK_IM_MODULE=gtk-im-context-simple GSETTINGS_BACKEND=memory \
  sh "$here/../screen.sh" sh -c '
    # The bus and its services talk a lot: only the command keeps our outputs.
    exec 3>&1 4>&2 >/dev/null 2>&1
    exec dbus-run-session -- sh -c "exec \"\$@\" >&3 2>&4 3>&- 4>&-" sh "$@"
  ' sh timeout "${GUI_LIMIT:-120}" "$@"
