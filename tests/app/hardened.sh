#!/usr/bin/env bash
# Looks into the program for what the build was told to harden (src/harden.cmake).
# Usage: hardened.sh RISEBOOK LIBRARY   LIBRARY is one of ours: what is linked in from others may be
# hardened by them, so that the program alone would tell nothing of our own code.
set -euo pipefail
program=$1
library=$2
wrong=0
holds() {
  if eval "$2"; then
    echo "  has $1"
  else
    echo "FAILED: no $1"
    wrong=1
  fi
}
dynamic=$(readelf -dW "$program")
segments=$(readelf -lW "$program")
ours=$(readelf -sW "$library")
holds "position independence" 'grep -q "Position-Independent\|Type: *DYN" <(readelf -hW "$program")'
holds "relocations read-only after start" 'grep -q GNU_RELRO <<<"$segments"'
holds "all symbols bound at start" 'grep -qE "BIND_NOW|FLAGS.*NOW" <<<"$dynamic"'
holds "a stack that cannot be executed" 'grep -E "GNU_STACK" <<<"$segments" | grep -qv "E "'
holds "the stack protector" 'grep -q __stack_chk_fail <<<"$ours"'
holds "checked calls of the C library" 'grep -qE " __[a-z]+_chk$" <<<"$ours"'
holds "assertions of the C++ library" 'grep -q __glibcxx_assert_fail <<<"$ours"'
exit $wrong
