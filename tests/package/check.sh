#!/usr/bin/env bash
# The Debian package on a bare Debian 12, as a user meets it: installed with nothing but what it depends
# on; then on a desktop started from its menu entry, a book opened by double click, a lift logged by the
# command line and by clicks; then purged, when only what is the user's may be left. Needs root, a
# network, Xvfb's pictures turned into PNG by ImageMagick, and mmdebstrap. The mirror is this machine's.
# Usage: check.sh BUILD_DIR SOURCE_DIR
set -euo pipefail
build=$(realpath "$1")
source_dir=$(realpath "$2")
if [ -z "${RISEBOOK_APART:-}" ]; then
  [ "$(id -u)" -eq 0 ] || { echo "must be run as root: it installs a system of its own into a folder"; exit 2; }
  command -v mmdebstrap >/dev/null || { echo "install the Debian package mmdebstrap"; exit 2; }
  # What is mounted and started in here ends with it.
  RISEBOOK_APART=1 exec unshare --mount --pid --fork --mount-proc bash "$0" "$@"
fi

root=$(mktemp -d)
trap 'umount -R "$root"/{proc,dev,sys} 2>/dev/null; mountpoint -q "$root/proc" || rm -rf --one-file-system "$root"' EXIT
pictures=$build/package_check
rm -rf "$pictures"
mkdir -p "$pictures"
step() { echo "== $*"; }
fail() {
  echo "FAILED: $*"
  exit 1
}
inside() { chroot "$root" env -i PATH=/usr/sbin:/usr/bin:/sbin:/bin LANG=C.UTF-8 DEBIAN_FRONTEND=noninteractive "$@"; }
as_user() { inside setpriv --reuid=foreman --regid=foreman --init-groups env HOME=/home/foreman "$@"; }
apt() { inside apt-get -qq -y "$@" >"$root/tmp/apt.log" 2>&1 || { tail -n 20 "$root/tmp/apt.log"; fail "apt-get $*"; }; }

deb=$(ls -t "$build"/risebook_*.deb | head -n 1)
step "a bare Debian 12 for $(basename "$deb")"
mapfile -t lists < <(grep -ls bookworm /etc/apt/sources.list /etc/apt/sources.list.d/*.list /etc/apt/sources.list.d/*.sources)
[ "${#lists[@]}" -gt 0 ] || fail "this machine's /etc/apt names no mirror of Debian 12"
apt-config dump | grep -E '^Acquire::(http|https|ftp|Check|Retries)' >"$pictures/apt.conf" || true
mmdebstrap --quiet --variant=minbase --aptopt="$pictures/apt.conf" bookworm "$root" "${lists[@]}"
rm "$pictures/apt.conf"
cp /etc/hosts "$root/etc/hosts"
for folder in proc dev sys; do mount --rbind "/$folder" "$root/$folder"; done
printf '#!/bin/sh\nexit 101\n' >"$root/usr/sbin/policy-rc.d"  # no services in here
chmod 755 "$root/usr/sbin/policy-rc.d"
inside useradd --create-home foreman
cp "$deb" "$root/tmp/"
deb=./tmp/$(basename "$deb")
apt update

step "installed with what it depends on, and no more"
apt install --no-install-recommends "$deb"
code=0
as_user risebook demo --to /home/foreman/demo >/dev/null || code=$?
[ "$code" -eq 1 ] || fail "the demo ended with $code, not 1"
as_user risebook picture pour --book /home/foreman/demo/demo.risebook --at 2026-03-02T06:54:50Z \
  --utc-offset +00:00 --to /home/foreman/bare.png || fail "no picture without a display"
cp "$root/home/foreman/bare.png" "$pictures/"
apt purge --autoremove risebook
rm -rf "$root/home/foreman/"{demo,bare.png,.local,.config,.cache}

step "a desktop"
apt install --no-install-recommends xvfb xauth xdotool dbus libglib2.0-bin libgtk-3-bin man-db bash-completion \
  shared-mime-info desktop-file-utils hicolor-icon-theme
files() { # caches, logs and apt's own books are nobody's to tell
  (cd "$root" && find . -xdev \( -path ./proc -o -path ./sys -o -path ./dev -o -path ./tmp -o -path ./run \
    -o -path ./var/cache -o -path ./var/log -o -path ./var/lib/apt -o -path ./var/lib/dpkg \) -prune -o -print | sort)
}
files >"$pictures/before"

step "installed, started from the menu, a book opened by double click"
apt install "$deb"
head -n 19 "$source_dir/assets/demo-pour.jsonl" >"$root/tmp/open.jsonl"
cp "$source_dir/tests/package/session.sh" "$root/tmp/"
mkdir -p "$root/tmp/.X11-unix" "$root/tmp/glass"
chmod 1777 "$root/tmp/.X11-unix" "$root/tmp" "$root/tmp/glass"
ended=0
as_user dbus-run-session -- bash /tmp/session.sh || ended=$?
for shot in "$root"/tmp/glass/*.xwd; do
  convert "xwd:$shot" "$pictures/$(basename "$shot" .xwd).png" || true
done
[ "$ended" -eq 0 ] || fail "the session ended with $ended"

step "purged"
apt purge --autoremove risebook
files >"$pictures/after"
lost=$(comm -23 "$pictures/before" "$pictures/after")
[ -z "$lost" ] || fail "gone, that stood there before it was installed: $lost"
left=$(comm -13 "$pictures/before" "$pictures/after")
echo "left:"
sed 's/^/  /' <<<"$left"
others=$(grep -v '^\./home/foreman/' <<<"$left" || true)
[ -z "$others" ] || fail "left outside the user's own folder: $others"
# The user's: books and what stands beside them, the mirror, the key, settings, and what the desktop
# and its drivers keep of anything they open.
strange=$(grep -vE '^\./home/foreman/(Documents|stick|\.local|\.local/share|\.local/share/risebook|\.config|\.config/risebook|\.cache)(/|$)' <<<"$left" || true)
[ -z "$strange" ] || fail "left, and nothing of the user's: $strange"
echo "the package came, worked and went; pictures in $pictures"
