#!/usr/bin/env bash
# The window killed in the middle of clicks, RISEBOOK_ROUNDS times (3). Usage: kill_soak.sh RISEBOOK
set -euo pipefail
build=$(dirname "$1")
here=$(cd "$(dirname "$0")" && pwd)
exec xvfb-run -a -s "-screen 0 1280x800x24 -noreset" "$build/tests/risebook_kill_soak" "$1" "$here/../.."
