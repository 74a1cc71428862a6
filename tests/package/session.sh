#!/usr/bin/env bash
# A user's sitting at a desktop: run by check.sh inside the bare system, on a session bus of its own.
set -euo pipefail
export DISPLAY=:7 HOME=/home/foreman
cd "$HOME"
Xvfb :7 -screen 0 1280x800x24 -noreset -fbdir /tmp/glass >/tmp/glass/server.log 2>&1 &
server=$!
trap 'kill $server' EXIT
pour=CW2-L14
book=$HOME/Documents/wall.risebook

fail() {
  look failed
  echo "FAILED: $*"
  exit 1
}
look() { cp /tmp/glass/Xvfb_screen0 "/tmp/glass/$1.xwd"; }
window() { # waits for the program's window; its process
  local found=""
  for _ in $(seq 150); do
    found=$(xdotool search --onlyvisible --name '^Risebook$' 2>/dev/null | head -n 1 || true)
    [ -n "$found" ] && break
    sleep 0.1
  done
  [ -n "$found" ] || fail "no window came up: $1"
  xdotool windowmove "$found" 0 0
  program=$(xdotool getwindowpid "$found")
  sleep 2
  kill -0 "$program" || fail "the window went away by itself: $1"
}
leave() {
  kill -TERM "$program"
  for _ in $(seq 200); do
    kill -0 "$program" 2>/dev/null || return 0
    sleep 0.1
  done
  fail "the program does not end"
}
click() {
  xdotool mousemove "$1" "$2"
  sleep 0.2
  xdotool mousedown 1
  sleep 0.1
  xdotool mouseup 1
  sleep 1
}
expect() { # kind, count
  for _ in $(seq 50); do
    [ "$(risebook script --book "$book" --pour "$pour" | grep -c "\"do\":\"$1\"")" -eq "$2" ] && return 0
    sleep 0.1
  done
  fail "expected $2 of $1"
}
for _ in $(seq 50); do
  xdotool getdisplaygeometry >/dev/null 2>&1 && break
  sleep 0.1
done

echo "-- from the menu"
gtk-launch risebook
window "from the menu"
look menu
leave
[ -s .local/share/risebook/pours.risebook ] || fail "started from the menu it made no book of the user's own"

echo "-- a pour by the command line"
mkdir -p Documents stick
printf '{"mirror_folder": "%s/stick"}\n' "$HOME" >.config/risebook/screens.json
risebook replay /tmp/open.jsonl --book "$book"

echo "-- its type"
cp "$book" Documents/letter-from-site
for file in "$book" Documents/letter-from-site; do
  known=$(gio info -a standard::content-type "$file")
  [[ "$known" == *application/x-risebook* ]] || fail "$file is not known as a book: $known"
done
rm Documents/letter-from-site
known=$(gio mime application/x-risebook)
[[ "$known" == *risebook.desktop* ]] || fail "nothing opens application/x-risebook: $known"

echo "-- a double click on the book, and a lift logged by clicks"
gio open "$book"
window "by double click"
look opened
click 223 602  # START LIFT 1
expect lift-start 1
click 1181 704  # RUN R1
expect run 1
look running
click 1181 704  # REST R1
expect rest 1
leave
risebook verify "$book" >/dev/null || fail "the chain does not hold"
[ -n "$(find stick -name '*.riseline' -size +0)" ] || fail "no mirror on the stick"

echo "-- files that are no books, or not this user's to read"
echo "dear sir" >Documents/letter.risebook
gio open Documents/letter.risebook
window "a file that is no book"
look no-book
leave
[ "$(cat Documents/letter.risebook)" = "dear sir" ] || fail "the letter was written to"
rm Documents/letter.risebook
cp "$book" Documents/locked.risebook
chmod 000 Documents/locked.risebook
gio open Documents/locked.risebook
window "a book that may not be read"
look no-permission
leave
rm -f Documents/locked.risebook*

echo "-- manual page and completion"
man risebook >Documents/manual.txt 2>/dev/null
grep -q "Append a pour script" Documents/manual.txt || fail "no manual page"
rm Documents/manual.txt
known=$(bash -c 'source /usr/share/bash-completion/bash_completion; _completion_loader risebook || true
  complete -p risebook')
[[ "$known" == *_risebook* ]] || fail "no completion: $known"
