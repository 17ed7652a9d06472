#!/bin/sh
# test-check.sh - published values agree, and the checker is no rubber stamp.
#
# usage: test-check.sh SOURCE-ROOT BUILD-ROOT
root=$1
build=$2
. "$root/tests/tap.sh"
check=$build/tests/reference/check-reference
here=$root/tests/reference
work=$(mktemp -d) || exit 1
trap 'rm -rf "$work"' EXIT

# status COMMAND...: what it exits with.
status ()
{
  "$@" >/dev/null 2>&1
  echo $?
}

# Every copied file: all rows ok, none left out.
for file in "$here"/*.csv; do
  name=$(basename "$file" .csv)
  case $name in wrong*) continue ;; esac
  same "/reference/$name" "0: all ok" "$("$check" "$file" >"$work/out"
    echo "$?: $(grep -v ' ok$' "$work/out" | sed 's/^\([0-9]*\) rows: \1 ok, 0 differ, 0 unknown$/all ok/')")"
done

# Files of mistakes: each is told in its own words, and none of them passes.
for file in "$here"/wrong*.csv; do
  name=$(basename "$file" .csv)
  same "/reference/$name-words" "$(cat "$here/$name.expected")" "$("$check" "$file")"
  same "/reference/$name-status" 1 "$(status "$check" "$file")"
done

# A value that is off in its last printed digit is found, in every row of every file.
for file in "$here"/*.csv; do
  name=$(basename "$file" .csv)
  case $name in wrong*) continue ;; esac
  awk -F, -v OFS=, 'NR == 1 { print }
    $6 == "exact" && $4 ~ /^-?[0-9]+([.][0-9]+)?$/ {
      digit = substr ($4, length ($4))
      $4 = substr ($4, 1, length ($4) - 1) (digit + 1) % 10
      print
    }' "$file" >"$work/off.csv"
  same "/reference/$name-off-by-a-digit" "none passes" "$("$check" "$work/off.csv" >"$work/out"
    grep -q ' differs got=' "$work/out" && ! grep ' ok$' "$work/out" && echo "none passes")"
done

# Files that cannot be used.
: >"$work/empty.csv"
same /reference/empty 2 "$(status "$check" "$work/empty.csv")"
head -n 1 "$here/goods.csv" >"$work/header.csv"
same /reference/header-only 2 "$(status "$check" "$work/header.csv")"
sed '1s/,unit,/,units,/' "$here/goods.csv" >"$work/column.csv"
same /reference/column-missing 2 "$(status "$check" "$work/column.csv")"
same /reference/no-such-file 2 "$(status "$check" "$work/none.csv")"
same /reference/a-folder 2 "$(status "$check" "$work")"
same /reference/no-argument 2 "$(status "$check")"
printf 'id,topic,inputs,expected,unit,tolerance\n"x,break-even\n' >"$work/quote.csv"
same /reference/open-quote 2 "$(status "$check" "$work/quote.csv")"

# Columns go by name; a byte order mark and line ends of another system do no harm.
{ printf '\357\273\277'; sed 's/$/\r/' "$here/hens.csv"; } >"$work/crlf.csv"
same /reference/mark-and-crlf 0 "$(status "$check" "$work/crlf.csv")"
printf 'tolerance,unit,expected,inputs,topic,id\nexact,d,21,species=chicken;ask=incubation_time,incubation,a\n' \
  >"$work/order.csv"
same /reference/columns-by-name 0 "$(status "$check" "$work/order.csv")"

# Numbers of the file have a point, whatever the locale writes.
locales=$work/locales
if mkdir "$locales" && localedef -i de_DE -f UTF-8 "$locales/de_DE.UTF-8" 2>/dev/null; then
  same /reference/locale-with-comma "$("$check" "$here/breakeven.csv" | tail -n 1)" \
    "$(LOCPATH=$locales LC_ALL=de_DE.UTF-8 "$check" "$here/breakeven.csv" | tail -n 1)"
else
  tap_count=$((tap_count + 1))
  echo "ok $tap_count /reference/locale-with-comma # SKIP no locale could be made here"
fi

# The command of the repository's root.
cd "$root" || exit 1
same /reference/command 0 "$(STEAD_BUILD=$build status tests/check-reference tests/reference/hens.csv)"
mkdir -p "$work/tree/tests"
cp tests/check-reference "$work/tree/tests"
cd "$work/tree" || exit 1
same /reference/command-not-built 2 "$(STEAD_BUILD='' status tests/check-reference "$here/hens.csv")"
same /reference/command-says-how "yes" \
  "$(STEAD_BUILD='' tests/check-reference x 2>&1 | grep -q 'ninja -C build' && echo yes)"

finish
