#!/usr/bin/env bash
# A lift placed by real clicks in a real window, with the program killed in the middle of a run:
# started again it must stand where it stood, and the run be as long as it truly was.
# Usage: place_a_lift.sh RISEBOOK SOURCE_DIR (under a display of 1280x800, as xvfb-run gives it)
set -euo pipefail
risebook=$1
source_dir=$2
if [ -z "${RISEBOOK_IN_XVFB:-}" ]; then
  # -noreset: a server that resets after its last window refuses the next one for a moment.
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
book=$folder/live.risebook
pour=CW2-L14

fail() {
  echo "FAILED: $1"
  "$risebook" script --book "$book" --pour "$pour" | tail -n 8
  exit 1
}
start() {
  "$risebook" "$book" --width 1280 --height 800 2>"$folder/errors" &
  program=$!
  local window=""
  for _ in $(seq 100); do
    window=$(xdotool search --name Risebook 2>/dev/null | head -n 1 || true)
    [ -n "$window" ] && break
    sleep 0.1
  done
  [ -n "$window" ] || fail "no window came up: $(cat "$folder/errors")"
  xdotool windowmove "$window" 0 0
  sleep 1
}
click() {
  xdotool mousemove "$1" "$2"
  sleep 0.1
  xdotool mousedown 1
  sleep 0.1
  xdotool mouseup 1
  sleep 0.8
}
# Waits until the book holds this many events of a kind.
expect() {
  for _ in $(seq 50); do
    [ "$("$risebook" script --book "$book" --pour "$pour" | grep -c "\"do\":\"$1\"")" -eq "$2" ] && return
    sleep 0.1
  done
  fail "expected $2 of $1"
}

# The demo pour up to the hanging of its first rows: open, nothing placed.
head -n 19 "$source_dir/assets/demo-pour.jsonl" >"$folder/open.jsonl"
"$risebook" replay "$folder/open.jsonl" --book "$book" >/dev/null

start
click 223 602 # START LIFT 1
expect lift-start 1
click 1181 704 # RUN R1
expect run 1
sleep 1
kill -9 "$program"
wait "$program" 2>/dev/null || true
sleep 3
start
click 1181 704 # the same place is REST R1 now
expect rest 1
click 1181 536 # RUN R2
expect run 2
sleep 1
click 1181 536 # REST R2
expect rest 2
click 100 602  # TOP
click 738 709  # KEEP
expect top 1
click 302 602  # END LIFT 1
click 738 709  # KEEP
expect lift-end 1

# Killed or not, R1 ran through: at least the second before, the three dead ones and the start.
"$risebook" check --book "$book" --pour "$pour" --json >"$folder/check.json" || true
seconds=$(sed -n 's/^ *"\(from\|to\)": "\(.*\)",$/\2/p' "$folder/check.json" | tail -n 4 | head -n 2 |
  while read -r moment; do date -d "$moment" +%s.%N; done | paste -sd' ' | awk '{print $2 - $1}')
awk -v s="$seconds" 'BEGIN { exit !(s >= 5 && s < 120) }' || fail "R1 ran $seconds s, 5 to 120 were expected"
"$risebook" verify "$book" >/dev/null || fail "the chain does not hold"
echo "A lift placed by clicks, killed in a run of $seconds s: nothing lost."
