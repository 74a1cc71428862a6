#!/usr/bin/env bash
# A book that cannot be opened is told in a window, by words on standard error and by exit code 3;
# without a display by the last two.
# Usage: failure.sh RISEBOOK
set -euo pipefail
risebook=$1
if [ -z "${RISEBOOK_IN_XVFB:-}" ]; then
  RISEBOOK_IN_XVFB=1 exec xvfb-run -a -s "-screen 0 1280x800x24 -noreset" bash "$0" "$@"
fi

folder=$(mktemp -d)
program=0
finish() {
  [ "$program" -eq 0 ] || kill -9 "$program" 2>/dev/null || true
  rm -rf "$folder"
}
trap finish EXIT
export XDG_CONFIG_HOME=$folder/config
fail() {
  echo "FAILED: $1"
  cat "$folder/errors"
  exit 1
}

echo "dear sir" >"$folder/letter.risebook"
"$risebook" "$folder/letter.risebook" 2>"$folder/errors" &
program=$!
window=""
for _ in $(seq 100); do
  window=$(xdotool search --name Risebook 2>/dev/null | head -n 1 || true)
  [ -n "$window" ] && break
  kill -0 "$program" 2>/dev/null || fail "the program ended without a window"
  sleep 0.1
done
[ -n "$window" ] || fail "no window came up"
sleep 1
kill -0 "$program" 2>/dev/null || fail "the window went away by itself"
kill -TERM "$program"
code=0
wait "$program" || code=$?
program=0
[ "$code" -eq 3 ] || fail "exit code $code, not 3"
grep -q "not a book of Risebook" "$folder/errors" || fail "nothing on standard error"
[ "$(cat "$folder/letter.risebook")" = "dear sir" ] || fail "the file was written to"

code=0
env -u DISPLAY -u WAYLAND_DISPLAY "$risebook" "$folder/letter.risebook" 2>"$folder/errors" || code=$?
[ "$code" -eq 3 ] || fail "without a display: exit code $code, not 3"
grep -q "not a book of Risebook" "$folder/errors" || fail "without a display: no words"
echo "told in a window, on standard error and by exit code 3"
