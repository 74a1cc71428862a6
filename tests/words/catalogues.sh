#!/usr/bin/env bash
# Every word that is marked to be told later stands in every finished catalogue; gettext's own tools
# name those that do not. Usage: catalogues.sh SOURCE_FOLDER
set -euo pipefail
cd "$1"
marked=$(mktemp)
trap 'rm -f "$marked" "$marked.out"' EXIT
find src -name '*.cpp' -o -name '*.h' | LC_ALL=C sort |
  xargs xgettext --from-code=UTF-8 --language=C++ --keyword=said -o "$marked"
count=$(grep -c '^msgid' "$marked")
[ "$count" -gt 50 ] || { echo "only $count marked words were found"; exit 1; }
lacking=0
for po in src/words/*.po; do
  msgfmt --check --output-file=/dev/null "$po"
  grep -q '^"X-Finished: yes' "$po" || { echo "$po: not finished, English stands in"; continue; }
  msgcmp "$po" "$marked" 2>"$marked.out" || lacking=1
  grep -v 'this message is not used' "$marked.out" | grep 'msg\|message' &&
    while IFS=: read -r file line _; do
      [ "$file" != "$marked" ] || sed -n "$((line - 1)),$((line + 3))p" "$marked"
    done < <(grep 'not defined' "$marked.out")
done
[ $lacking -eq 0 ] && echo "every one of $count marked words is told in every finished language"
exit $lacking
