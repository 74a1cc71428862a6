#!/usr/bin/env bash
# One word for one thing. Holds the Spanish catalogue to the table of the jobsite's words, and the
# English texts to the words of DEVELOPERS.md. Usage: glossary.sh SOURCE_FOLDER
set -euo pipefail
cd "$1"
export LC_ALL=C.UTF-8
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT

# A catalogue as lines "English <tab> Spanish", contexts and plural forms included.
pairs() {
  msgcat --no-wrap "$1" | awk '
    function close_entry() { if (id != "") print id "\t" str; id = str = "" }
    /^msgid "/ { close_entry(); sub(/^msgid "/, ""); sub(/"$/, ""); id = $0; into = "id"; next }
    /^msgid_plural "/ { sub(/^msgid_plural "/, ""); sub(/"$/, ""); id = id " " $0; into = "id"; next }
    /^msgstr(\[[0-9]\])? "/ { sub(/^msgstr(\[[0-9]\])? "/, ""); sub(/"$/, ""); str = str " " $0
                              into = "str"; next }
    /^"/ { gsub(/^"|"$/, ""); if (into == "id") id = id $0; else str = str $0; next }
    END { close_entry() }'
}

# What both halves share: a text as words in small letters with one space about each.
words='
  function small(text) {
    text = tolower(text)
    gsub(/Á/, "á", text); gsub(/É/, "é", text); gsub(/Í/, "í", text); gsub(/Ó/, "ó", text)
    gsub(/Ú/, "ú", text); gsub(/Ñ/, "ñ", text); gsub(/Ü/, "ü", text)
    return text
  }
  function without(text, phrases,   list, n, i, at) {
    n = split(phrases, list, "|")
    for (i = 1; i <= n; i++) {
      if (list[i] == "=" text) return ""  # the whole message
      while (list[i] != "" && (at = index(text, list[i])) > 0)
        text = substr(text, 1, at - 1) " " substr(text, at + length(list[i]))
    }
    return text
  }
  function spaced(text) {
    gsub(/\{[^}]*\}/, " ", text); gsub(/\\n/, " ", text)
    gsub(/¿|¡|·|×|±|…/, " ", text); gsub(/[][ \t.,:;!?()"\\\/%*+=<>-]+/, " ", text)
    return " " text " "
  }
  function first_of(text, choices,   list, n, i) {
    n = split(choices, list, "|")
    for (i = 1; i <= n; i++)
      if (list[i] != "" && index(text, " " list[i] " ") > 0) return list[i]
    return ""
  }'

pairs src/words/es.po >"$work/es"
[ "$(wc -l <"$work/es")" -gt 2000 ] || { echo "the catalogue was not read"; exit 1; }
failed=0
awk "$words"'
  FNR == NR { if ($0 !~ /^#/ && $0 !~ /^english;/) { if (split($0, f, ";") != 6) { print "glossary: six fields wanted: " $0; bad = 1 }
      n++; english[n] = f[1]; spanish[n] = f[2]; never[n] = f[3]; elsewhere[n] = f[4]; apart[n] = f[5] }; next }
  { split($0, half, "\t"); en = small(half[1]); es = small(half[2])
    for (i = 1; i <= n; i++) {
      if ((w = first_of(spaced(without(es, apart[i])), never[i])) != "") {
        print "\"" w "\" stands for none of ours, say \"" spanish[i] "\": " $0; bad = 1 }
      if ((w = first_of(spaced(without(en, elsewhere[i])), english[i])) != "" &&
          first_of(spaced(es), spanish[i]) == "") {
        print "\"" w "\" is told without \"" spanish[i] "\": " $0; bad = 1 }
    } }
  END { if (n < 30) { print "only " n " terms were read"; bad = 1 }; exit bad }
' src/words/glossary.csv "$work/es" || failed=1

# The English: the words of the catalogue and those marked in the source.
find src -name '*.cpp' -o -name '*.h' | sort |
  xargs xgettext --from-code=UTF-8 --language=C++ --keyword=said -o "$work/marked.po"
{ cut -f1 "$work/es"; pairs "$work/marked.po" | cut -f1; } | sort -u >"$work/en"
awk -F'|' '/^## / { inside = $0 == "## Words" } inside && /^\|/ && !/^\|-/ && !/\| of ours/' \
  DEVELOPERS.md >"$work/table"
awk "$words"'
  function trimmed(text, part) { gsub(/^ +| +$/, "", text); gsub(part " +", "|", text); return text }
  FNR == NR { if (split($0, f, "|") != 6) { print "DEVELOPERS.md: four columns wanted: " $0; bad = 1 }
      n++; ours[n] = trimmed(f[2], ","); never[n] = trimmed(f[4], ",")
      apart[n] = trimmed(f[5], ";"); next }
  { en = small($0)
    for (i = 1; i <= n; i++)
      if ((w = first_of(spaced(without(en, apart[i])), never[i])) != "") {
        print "\"" w "\" where the house says \"" ours[i] "\": " $0; bad = 1 } }
  END { if (n < 10) { print "only " n " words were read from DEVELOPERS.md"; bad = 1 }; exit bad }
' "$work/table" "$work/en" || failed=1
[ $failed -eq 0 ] && echo "every text says one thing by one word"
exit $failed
