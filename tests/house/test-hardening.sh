#!/bin/sh
# test-hardening.sh - the built program carries the protections that were asked for.
#
# usage: test-hardening.sh SOURCE-ROOT PROGRAM
set -u

root=$1
program=$2
. "$root/tests/tap.sh"
export LC_ALL=C.UTF-8

# Each looks at one program; sanitizers replace none of these.
moves_in_memory ()      { readelf -hW "$1" | grep -q 'Type: *DYN' && readelf -dW "$1" | grep -q 'FLAGS_1.*PIE'; }
binds_at_start ()       { readelf -dW "$1" | grep -qE 'BIND_NOW|FLAGS_1.*NOW'; }
seals_its_tables ()     { readelf -lW "$1" | grep -q GNU_RELRO; }
runs_no_stack ()        { readelf -lW "$1" | grep -qE 'GNU_STACK .* RW +0'; }
guards_its_stack ()     { readelf -sW "$1" | grep -q __stack_chk_fail; }
writes_no_code ()       { ! readelf -lW "$1" | grep -qE 'LOAD .* RWE '; }
needs_no_search_path () { ! readelf -dW "$1" | grep -qE '\((RPATH|RUNPATH)\)'; }

check /house/hardening/moves-in-memory moves_in_memory "$program"
check /house/hardening/binds-at-start binds_at_start "$program"
check /house/hardening/seals-its-tables seals_its_tables "$program"
check /house/hardening/runs-no-stack runs_no_stack "$program"
check /house/hardening/guards-its-stack guards_its_stack "$program"
check /house/hardening/writes-no-code writes_no_code "$program"
check /house/hardening/needs-no-search-path needs_no_search_path "$program"

# A program built without them is told apart.
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT
echo 'int main (void) { char a[64]; return __builtin_sprintf (a, "%p", (void *) a) == 0; }' > "$work/bare.c"
if gcc -no-pie -fno-pie -fno-stack-protector -Wl,-z,norelro,-z,lazy,-z,execstack,-rpath,/nowhere \
     -o "$work/bare" "$work/bare.c" 2>/dev/null; then
  refuse /house/hardening/finds-fixed-place moves_in_memory "$work/bare"
  refuse /house/hardening/finds-late-binding binds_at_start "$work/bare"
  refuse /house/hardening/finds-open-tables seals_its_tables "$work/bare"
  refuse /house/hardening/finds-running-stack runs_no_stack "$work/bare"
  refuse /house/hardening/finds-bare-stack guards_its_stack "$work/bare"
  refuse /house/hardening/finds-search-path needs_no_search_path "$work/bare"
else
  report no /house/hardening/bare-program-builds
fi
finish
