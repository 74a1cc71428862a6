#!/usr/bin/env bash
# What a package carries beside the program says what the program says: the manual page has every
# command and option of --help, completion offers each, the changelog begins with its version; menu
# entry and type of a book hold.
# Usage: words.sh RISEBOOK SOURCE_DIR
set -euo pipefail
risebook=$1
files=$2/assets/package
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
failures=0
fail() {
  echo "FAILED: $1"
  failures=$((failures + 1))
}

"$risebook" manual man >"$folder/risebook.1"
"$risebook" manual bash >"$folder/risebook.bash"
# The page as it is typed: without roff's marks.
sed -e 's/\\f[BIR]//g' -e 's/\\-/-/g' -e "s/\\\\(aq/'/g" -e 's/\\&//g' -e 's/\\e/\\/g' "$folder/risebook.1" >"$folder/page"

# One command's part of the page: what stands between its heading and the next.
part() {
  if [ -z "$1" ]; then
    awk '/^\.SH OPTIONS$/ { on = 1; next } /^\.S[HS] / { on = 0 } on' "$folder/page"
  else
    awk -v name="$1" '/^\.S[HS] / { on = ($0 == ".SS " name) } on' "$folder/page"
  fi
}
commands=0
options=0
look() { # a command's words; none: the program itself
  local help name option offered
  # shellcheck disable=SC2086  # "calc rise" is two words
  help=$("$risebook" $1 --help)
  part "$1" >"$folder/part"
  [ -s "$folder/part" ] || fail "the manual page has no \"$1\""
  # shellcheck disable=SC1091
  offered=$(
    source "$folder/risebook.bash"
    # shellcheck disable=SC2206
    COMP_WORDS=(risebook $1 "")
    COMP_CWORD=$((${#COMP_WORDS[@]} - 1))
    _risebook
    echo " ${COMPREPLY[*]} "
  )
  for option in $(grep -oE '^  (-h,)?--[a-z-]+' <<<"$help" | grep -oE -e '--[a-z-]+'); do
    options=$((options + 1))
    grep -qE -e "(^|,)$option( |,|\$)" "$folder/part" || fail "the manual page has no $option of \"$1\""
    [[ "$offered" == *" $option "* ]] || fail "completion has no $option of \"$1\""
    # Behind its name, in the line below where that is long, stands what it is for.
    grep -A1 -E -e "^  (-h,)?$option( |\$)" <<<"$help" |
      awk 'NR == 1 { said = length($0) > 30 && substr($0, 30, 1) == " " } NR == 2 && substr($0, 1, 30) ~ /^ +$/ { said = 1 } END { exit !said }' ||
      fail "--help says nothing of $option of \"$1\""
  done
  for name in $(sed -n '/^Subcommands:/,/^$/ s/^  \([a-z]\+\) .*/\1/p' <<<"$help"); do
    commands=$((commands + 1))
    [[ "$offered" == *" $name "* ]] || fail "completion has no \"$name\" behind \"$1\""
    grep -qE "^  $name +[^ ]" <<<"$help" || fail "--help says nothing of \"$name\""
    look "${1:+$1 }$name"
  done
}
look ""
[ "$commands" -ge 20 ] && [ "$options" -ge 100 ] || fail "only $commands commands and $options options were found"

stands=$("$risebook" --version | sed 's/^risebook //')
[ "$(sed -n '1s/^risebook (\(.*\)) .*/\1/p' "$files/changelog")" = "$stands" ] ||
  fail "the changelog begins with \"$(head -n 1 "$files/changelog")\", the program is $stands"

grep -qx 'Exec=risebook %f' "$files/risebook.desktop" || fail "the menu entry does not open a book"
type=$(sed -n 's/.*<mime-type type="\(.*\)">/\1/p' "$files/risebook-mime.xml")
grep -qx "MimeType=$type;" "$files/risebook.desktop" || fail "the menu entry does not open $type"
# The type knows a book by the bytes a book has.
"$risebook" demo --to "$folder/demo" >/dev/null || [ $? -eq 1 ]
[ "$(head -c 72 "$folder/demo/demo.risebook" | tail -c 4)" = \
  "$(sed -n 's/.*value="\(.*\)" offset="68".*/\1/p' "$files/risebook-mime.xml")" ] ||
  fail "a book's application id is not what the type says"

looked="the manual page and completion"
if command -v desktop-file-validate >/dev/null; then
  desktop-file-validate "$files/risebook.desktop" || fail "the menu entry does not validate"
  looked+=", the menu entry"
fi
if command -v groff >/dev/null; then
  [ -z "$(groff -man -Tutf8 -ww -z "$folder/risebook.1" 2>&1)" ] || fail "roff finds fault with the manual page"
  looked+=", roff"
fi
[ "$failures" -eq 0 ] || exit 1
echo "$commands commands, $options options, version $stands; looked at: $looked"
