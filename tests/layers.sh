#!/bin/sh
# layers.sh - the arrows between the layers, and that a name has one meaning, checked by reading the sources.
#
# usage: layers.sh [ROOT]
#
# The linker cannot see an include that a system header satisfies, or a word of
# SQL in a string; this can.  Reads ROOT/src and ROOT/tests.  First it proves on
# a small tree of its own that it finds each kind of fault (TAP, one case each).
set -u

here=$(CDPATH= cd -- "$(dirname -- "$0")" && pwd) || exit 1
root=${1:-$here/..}
. "$here/tap.sh"

# faults ROOT: one line a fault, "FILE:LINE: what"; nothing if all is well.
faults ()
{
  (
    cd "$1" || exit 1
    find src tests -type f \( -name '*.c' -o -name '*.h' \) 2>/dev/null | LC_ALL=C sort |
      xargs -r awk '
        function fault (what) { printf "%s:%d: %s\n", FILENAME, FNR, what }

        function layer_of (path,   parts, n) {
          n = split (path, parts, "/")
          if (parts[2] in may) return parts[2]
          return parts[1] == "src" ? "app" : "test"   # main.c and the commands see all
        }

        # An include of one of our own headers, "layer/…/stead-x.h".
        function own (header,   to, home) {
          to = header; sub (/\/.*/, "", to)
          if (header !~ /\//) {
            if (FILENAME !~ /^src\/[^\/]+$/ && in_src && header != "config.h")
              fault ("write \"layer/" header "\"")
            return
          }
          if (header ~ /\.\./) { fault ("an include goes through \"..\": " header); return }
          if (!(to in may)) return
          if (in_src && layer != to && index (" " may[layer] " ", " " to " ") == 0)
            fault (layer " must not include " header)
          if (header ~ /-private\.h$/) {
            home = FILENAME; sub (/^(src|tests)\//, "", home)
            if (in_src) sub (/\/[^\/]*$/, "", home); else sub (/\/.*/, "", home)
            sub (/\/[^\/]*$/, "", header)
            if (in_src ? header != home : to != home)
              fault ("a private header leaves its folder: " header)
          }
        }

        # An include of a system header.
        function foreign (header) {
          if (!in_src) return
          if (header ~ /^(gtk|gdk|gsk)\// && layer != "app")
            fault ("GTK outside app: " header)
          if (header ~ /^sqlite3/ && layer != "store")
            fault ("SQLite outside store: " header)
          if (header ~ /^(cairo|pango)/ && layer ~ /^(core|store|answer)$/)
            fault ("drawing in " layer ": " header)
          if (header ~ /^(gio\/|stdio\.h|time\.h|sys\/|unistd\.h)/ && layer == "core")
            fault ("core reads no file and no clock: " header)
        }

        BEGIN {
          may["core"]   = ""
          may["store"]  = "core"
          may["draw"]   = "core"
          may["answer"] = "store core"
          may["paper"]  = "answer draw core"
          may["app"]    = "core store draw answer paper"
        }
        FNR == 1 { layer = layer_of (FILENAME); in_src = FILENAME ~ /^src\// }
        match ($0, /^[ \t]*#[ \t]*include[ \t]*"[^"]+"/) {
          header = $0; sub (/^[^"]*"/, "", header); sub (/".*/, "", header); own (header)
        }
        match ($0, /^[ \t]*#[ \t]*include[ \t]*<[^>]+>/) {
          header = $0; sub (/^[^<]*</, "", header); sub (/>.*/, "", header); foreign (header)
        }
        in_src && layer != "store" && \
        /"([^"]*[^A-Za-z0-9_"])?(SELECT|INSERT|UPDATE|DELETE FROM|CREATE TABLE|PRAGMA)([^A-Za-z0-9_]|$)/ {
          fault ("SQL outside store")
        }
        in_src && layer == "core" && \
        /(^|[^a-z_])(g_date_time_new_now|g_get_(real|current|monotonic)_time|clock_gettime|time \(NULL\)|g_date_set_time_t|fopen|g_file_)/ {
          fault ("core reads no file and no clock")
        }
      '
    # A public type or constant has one meaning in the whole tree.
    find src -type f -name '*.h' 2>/dev/null | LC_ALL=C sort |
      xargs -r awk '
        function name (word) {
          if (word in at && at[word] != FILENAME)
            printf "%s:%d: %s means something else in %s\n", FILENAME, FNR, word, at[word]
          at[word] = FILENAME
        }
        match ($0, /^} Stead[A-Za-z0-9]+;/) { word = $0; gsub (/^} |;.*/, "", word); name(word) }
        match ($0, /^  STEAD_[A-Z0-9_]+( *=[^=]*)?,?( *\/\*.*)?$/) {
          word = $0; sub (/^ +/, "", word); sub (/[^A-Z0-9_].*/, "", word); name(word)
        }
      '
  )
}

# A small tree of our own.  place FILE LINE puts one line into it.
tree=$(mktemp -d) || exit 1
trap 'rm -rf "$tree"' EXIT
place ()
{
  mkdir -p "$tree/$(dirname "$1")"
  printf '%s\n' "$2" >> "$tree/$1"
}

# catches NAME FILE LINE: the line, alone, must be a fault of that file.
catches ()
{
  rm -rf "$tree/src" "$tree/tests"
  place "$2" "$3"
  case $(faults "$tree") in
    "$2:1: "*) report yes "/house/layers/catches-$1" ;;
    *) report no "/house/layers/catches-$1" "not caught: $3" ;;
  esac
}

catches core-to-store     src/core/a.c   '#include "store/stead-store.h"'
catches store-to-answer   src/store/a.h  '#include "answer/stead-cost-answer.h"'
catches store-to-draw     src/store/a.c  '#include "draw/stead-palette.h"'
catches draw-to-store     src/draw/a.c   '#include "store/stead-store.h"'
catches draw-to-answer    src/draw/a.c   '  #  include   "answer/stead-cost-answer.h"'
catches answer-to-draw    src/answer/a.c '#include "draw/stead-palette.h"'
catches answer-to-paper   src/answer/a.c '#include "paper/stead-page.h"'
catches paper-to-store    src/paper/a.c  '#include "store/stead-store.h"'
catches paper-to-app      src/paper/a.c  '#include "app/stead-window.h"'
catches dots              src/core/a.c   '#include "../store/stead-store.h"'
catches bare-name         src/core/a.c   '#include "stead-core-error.h"'
catches gtk-in-core       src/core/a.c   '#include <gtk/gtk.h>'
catches gtk-in-draw       src/draw/a.h   '#include <gdk/gdk.h>'
catches sqlite-in-app     src/app/a.c    '#include <sqlite3.h>'
catches sqlite-in-main    src/main.c     '#include <sqlite3.h>'
catches cairo-in-core     src/core/a.c   '#include <cairo/cairo.h>'
catches cairo-in-store    src/store/a.c  '#include <cairo.h>'
catches pango-in-answer   src/answer/a.c '#include <pango/pangocairo.h>'
catches clock-in-core     src/core/a.c   '  now = g_date_time_new_now_local ();'
catches file-in-core      src/core/a.c   '#include <gio/gio.h>'
catches sql-in-answer     src/answer/a.c '  static const char sql[] = "SELECT id FROM batch";'
catches sql-in-app        src/app/a.c    '  run (db, " UPDATE batch SET name = 1");'
catches sql-in-commands   src/stead-commands.c '  run (db, "PRAGMA user_version");'
catches sql-later-in-text src/paper/a.c  '  "WITH a AS (SELECT 1)"'
catches private-elsewhere src/app/a.c    '#include "store/stead-store-private.h"'
catches private-subfolder src/app/a.c    '#include "app/raise/stead-raise-private.h"'
catches private-in-test   tests/app/a.c  '#include "store/stead-store-private.h"'

rm -rf "$tree/src" "$tree/tests"
place src/core/a.h  '} SteadGoal;'
place src/store/a.h '} SteadGoal;'
same /house/layers/catches-two-meanings "src/store/a.h:1: SteadGoal means something else in src/core/a.h" "$(faults "$tree")"
rm -rf "$tree/src" "$tree/tests"
place src/core/a.h  '  STEAD_GOAL_MET,'
place src/store/a.h '  STEAD_GOAL_MET = 1,   /* reached */'
same /house/layers/catches-two-constants "src/store/a.h:1: STEAD_GOAL_MET means something else in src/core/a.h" \
  "$(faults "$tree")"

# What is right must pass.
rm -rf "$tree/src" "$tree/tests"
place src/core/a.c         '#include "config.h"'
place src/core/a.c         '#include "core/stead-money.h"'
place src/core/a.c         '#include <gsl/gsl_fit.h>'
place src/core/a.h         '} SteadGoal;'
place src/core/a.h         '  STEAD_GOAL_MET,'
place src/store/b.h        '} SteadSaving;'
place src/store/b.h        'int reached (int how);   /* STEAD_GOAL_MET */'
place src/core/a.c         '#include <glib/gi18n-lib.h>'
place src/store/a.c        '#include "core/stead-money.h"'
place src/store/a.c        '#include "store/stead-store-private.h"'
place src/store/a.c        '#include <sqlite3.h>'
place src/store/a.c        '  "SELECT 1"'
place src/draw/a.h         '#include <cairo.h>'
place src/draw/a.h         '#include "core/stead-money.h"'
place src/answer/a.c       '#include "store/stead-store.h"'
place src/answer/a.c       '  return STEAD_ANSWER_UPDATE; /* SELECT */'
place src/paper/a.c        '#include "answer/stead-cost-answer.h"'
place src/paper/a.c        '#include "draw/stead-palette.h"'
place src/app/raise/a.c    '#include "app/raise/stead-raise-private.h"'
place src/app/raise/a.c    '#include "store/stead-store.h"'
place src/app/raise/a.c    '#include <gtk/gtk.h>'
place src/app/raise/a.c    '  _("Select a batch and Update it.")'
place src/main.c           '#include "stead-commands.h"'
place src/main.c           '#include "paper/stead-page.h"'
place src/main.c           '#include <gtk/gtk.h>'
place tests/store/a.c      '#include "store/stead-store-private.h"'
place tests/store/a.c      '#include <sqlite3.h>'
place tests/store/a.c      '  "SELECT 1"'
same /house/layers/lets-the-right-pass "" "$(faults "$tree")"

# The project itself.
check /house/layers/there-are-sources test -f "$root/src/meson.build" -a -d "$root/src/core"
same /house/layers/arrows-hold "" "$(faults "$root")"
finish
