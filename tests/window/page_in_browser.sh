#!/usr/bin/env bash
# The record's page in a real browser (Debian: chromium, not asked for by install.sh): a click on a
# face tells its spot's story; every text that the record's JSON shows is found in the page, cell by
# cell; its photo is drawn. Not by ctest: cmake --build build --target page_in_browser
# Usage: page_in_browser.sh PROGRAM
set -euo pipefail
browser=$(command -v chromium || command -v chromium-browser) ||
  { echo "install the Debian package chromium"; exit 1; }
folder=$(mktemp -d)
trap 'rm -rf "$folder"' EXIT
"$1" demo --to "$folder" >/dev/null || [ $? -eq 1 ] # 1: it has findings
day=2026-03-02
book="$folder/demo.risebook"
# A photo of its blemish, as a camera writes one.
convert -size 1600x1200 plasma:grey-white -quality 90 "$folder/face.jpg"
blemish=$("$1" script --book "$book" --pour CW2-L14 |
  sed -n '/"do":"blemish"/s/.*"id":"\([^"]*\)".*/\1/p' | head -n 1)
XDG_DATA_HOME="$folder/data" "$1" photo --book "$book" --event "$blemish" --file "$folder/face.jpg" \
  --by mo >/dev/null
page_in() { # program, language
  "$1" record --book "$book" --day "$day" --to "$folder" --utc-offset +00:00 \
    --language "$2" --format html,json | grep 'html$'
}
english=$(page_in "$1" en)
spanish=$(page_in "$1" es)
# What a finger does: a click at a share of the drawing's width and height.
touch_page() { # file, share across, share down
  sed 's|</body>||; s|</html>||' "$1"
  cat <<END
<script>
const drawn = document.querySelector("figure.face svg");
drawn.scrollIntoView();
const seen = drawn.getBoundingClientRect();
drawn.dispatchEvent(new MouseEvent("click", { bubbles: true,
  clientX: seen.left + seen.width * $2, clientY: seen.top + seen.height * $3 }));
</script></body></html>
END
}
told() { # page, share across, share down
  touch_page "$1" "$2" "$3" >"$folder/touched.html"
  timeout 60 "$browser" --headless --no-sandbox --disable-gpu --user-data-dir="$folder/profile" \
    --dump-dom "file://$folder/touched.html" 2>/dev/null |
    sed -n 's|.*\(<div class="story"[^>]*>.*</dl></div>\).*|\1|p'
}
holds() { # text, part
  case "$1" in *"$2"*) ;; *) echo "no \"$2\" in: $1"; exit 1 ;; esac
}
story=$(told "$english" 0.2 0.7)
holds "$story" "<dt>Ticket</dt><dd>7141"
holds "$story" "<dt>Dose</dt>"
holds "$story" "<dt>Vibrated</dt><dd>R1: "
holds "$story" "<dt>Covered</dt>"
holds "$(told "$english" 0.605 0.5)" "none came here"
holds "$(told "$spanish" 0.2 0.7)" "<dt>Boleta</dt><dd>7141"
here=$(cd "$(dirname "$0")" && pwd)
for page in "$english" "$spanish"; do
  # A photo that is drawn has a size of its own.
  sed 's|</body>||; s|</html>||' "$page" >"$folder/drawn.html"
  cat >>"$folder/drawn.html" <<'END'
<script>
for (const photo of document.images) photo.dataset.drawn = photo.naturalWidth + "x" + photo.naturalHeight;
</script></body></html>
END
  timeout 60 "$browser" --headless --no-sandbox --disable-gpu --user-data-dir="$folder/profile" \
    --dump-dom "file://$folder/drawn.html" 2>/dev/null >"$folder/dom.html"
  python3 "$here/page_texts.py" "${page%.html}.json" "$folder/dom.html"
  grep -q 'data-drawn="1280x960"' "$folder/dom.html" || { echo "the photo is not drawn"; exit 1; }
done
echo "a click told a spot's story, in English and in Spanish, and of an opening that it has none; the photo is drawn"
