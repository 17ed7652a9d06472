# tap.sh - the few words in which a shell test reports.  Read it with ".".

tap_count=0
tap_failed=0

# report GOOD NAME [TEXT]: one case; TEXT says what was found if it is not good.
report ()
{
  tap_count=$((tap_count + 1))
  if [ "$1" = yes ]; then
    echo "ok $tap_count $2"
  else
    tap_failed=1
    echo "not ok $tap_count $2"
    [ -z "${3:-}" ] || printf '%s\n' "$3" | sed 's/^/# /'
  fi
}

# check NAME COMMAND...: good if the command succeeds.
check ()
{
  tap_name=$1
  shift
  if tap_found=$("$@" 2>&1); then
    report yes "$tap_name"
  else
    report no "$tap_name" "$tap_found"
  fi
}

# refuse NAME COMMAND...: good if the command fails.
refuse ()
{
  tap_name=$1
  shift
  if tap_found=$("$@" 2>&1); then
    report no "$tap_name" "this should have failed: $*"
  else
    report yes "$tap_name"
  fi
}

# same NAME EXPECTED FOUND
same ()
{
  [ "$2" = "$3" ] && report yes "$1" || report no "$1" "expected: $2
found: $3"
}

# finish: the plan, and the status of the whole.
finish ()
{
  echo "1..$tap_count"
  exit $tap_failed
}
