#!/usr/bin/env bash
# Looks into the program for what the build was told to harden.
# Usage: hardened.sh RISEBOOK
set -euo pipefail
program=$1
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
symbols=$(readelf -sW --dyn-syms "$program")
holds "position independence" 'grep -q "Position-Independent\|Type: *DYN" <(readelf -hW "$program")'
holds "relocations read-only after start" 'grep -q GNU_RELRO <<<"$segments"'
holds "all symbols bound at start" 'grep -qE "BIND_NOW|FLAGS.*NOW" <<<"$dynamic"'
holds "a stack that cannot be executed" 'grep -E "GNU_STACK" <<<"$segments" | grep -qv "E "'
holds "the stack protector" 'grep -q __stack_chk_fail <<<"$symbols"'
holds "checked calls of the C library" 'grep -qE "__[a-z]+_chk" <<<"$(grep -v stack_chk <<<"$symbols")"'
holds "assertions of the C++ library" 'grep -q __glibcxx_assert_fail <<<"$symbols"'
exit $wrong
