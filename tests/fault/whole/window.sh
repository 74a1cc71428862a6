#!/usr/bin/env bash
# Real clicks in the real window while its disk is slow, dead, full and gone: every tap is booked in
# order and at its own time, the later of them once the disk is well again.
# Usage: window.sh RISEBOOK DISK_SHIM SOURCE_DIR (under a display of 1280x800, as xvfb-run gives it)
set -euo pipefail
risebook=$1
shim=$2
source_dir=$3
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
export XDG_CONFIG_HOME=$folder/config XDG_DATA_HOME=$folder/data
mkdir "$folder/disk"
book=$folder/disk/live.risebook
pour=CW2-L14

booked() { "$risebook" script --book "$book" --pour "$pour"; }
fail() {
  echo "FAILED: $1"
  cat "$folder/errors"
  booked | tail -n 12
  exit 1
}
# How the disk is from here on (the words of preloaded/disk_shim.cpp).
disk_is() {
  echo "$1" >"$folder/says.new"
  mv "$folder/says.new" "$folder/says"
}
click() {
  xdotool mousemove "$1" "$2"
  sleep 0.05
  local before=$EPOCHREALTIME  # the press lies between the two, however busy the machine
  xdotool mousedown 1
  echo "$before $EPOCHREALTIME" >>"$folder/pressed"
  sleep 0.05
  xdotool mouseup 1
}
# Waits until the book holds this many runs and rests.
expect() {
  for _ in $(seq 100); do
    [ "$(booked | grep -cE '"do":"(run|rest)"')" -eq "$1" ] && return
    sleep 0.1
  done
  fail "expected $1 runs and rests: $2"
}
run_r1="1181 704"
run_r2="1181 536"

# The demo pour up to the start of its first lift: its first rows hang, nothing has run.
sed '/"lift-start"/q' "$source_dir/assets/demo-pour.jsonl" >"$folder/open.jsonl"
"$risebook" replay "$folder/open.jsonl" --book "$book" >/dev/null
LD_PRELOAD=$shim RISEBOOK_DISK=$folder/disk RISEBOOK_DISK_SAYS=$folder/says \
  ASAN_OPTIONS=verify_asan_link_order=0 \
  "$risebook" "$book" --width 1280 --height 800 2>"$folder/errors" &
program=$!
for _ in $(seq 100); do
  window=$(xdotool search --name Risebook 2>/dev/null | head -n 1 || true)
  [ -n "$window" ] && break
  sleep 0.1
done
[ -n "$window" ] || fail "no window came up"
xdotool windowmove "$window" 0 0
sleep 2

# Taps come quicker than the disk keeps them.
disk_is "sync-ms 300"
for place in "$run_r1" "$run_r2" "$run_r1" "$run_r2"; do
  click $place
  sleep 0.25
done
expect 4 "on a disk of 300 ms a sync"

taps=4
for how in "dead" "room 0" "gone"; do
  disk_is "$how"
  sleep 0.2
  click $run_r1
  sleep 0.6
  click $run_r2
  sleep 2
  kill -0 "$program" 2>/dev/null || fail "the program ended on a disk that is: $how"
  [ "$(booked | grep -cE '"do":"(run|rest)"')" -eq $taps ] || fail "booked on a disk that is: $how"
  disk_is ""
  taps=$((taps + 2))
  expect $taps "once the disk that was $how is well"
done
kill "$program"
wait "$program" 2>/dev/null || true
program=0

# In order, each on its row and at its own time.
booked | grep -E '"do":"(run|rest)"' >"$folder/taps"
rows=$(sed 's/.*"row":"\([^"]*\)".*/\1/' "$folder/taps" | paste -sd' ')
[ "$rows" = "R1 R2 R1 R2 R1 R2 R1 R2 R1 R2" ] || fail "the rows are $rows"
sed 's/.*"at":"\([^"]*\)".*/\1/' "$folder/taps" | while read -r at; do date -d "$at" +%s.%N; done |
  paste - "$folder/pressed" | awk '{ off = $1 < $2 ? $2 - $1 : $1 > $3 ? $1 - $3 : 0; if (off > worst) worst = off }
    END { printf "%.3f\n", worst; exit worst > 0.5 }' >"$folder/worst" ||
  fail "a tap was booked $(cat "$folder/worst") s off its press"
"$risebook" verify "$book" >/dev/null || fail "the chain does not hold"
echo "$taps taps on a slow, dead, full and vanished disk: each on its row, at most $(cat "$folder/worst") s off."
