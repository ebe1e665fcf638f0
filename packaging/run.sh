#!/bin/sh
# Builds Meter First and starts it: the window, or without a display the guided walk in this terminal.
#   packaging/run.sh                          the window
#   packaging/run.sh dryer_elec/no_heat       arguments are passed on
. "$(dirname "$0")/common.sh"

need build || { echo "Not everything could be installed; trying with what is there." >&2; }
say "Building (some minutes the first time)"
# A warning of some other compiler must not keep a person from the program. A build folder with tests in it stays one.
options=-DMF_WERROR=OFF
[ -f build/release/CMakeCache.txt ] || options="$options -DBUILD_TESTING=OFF"
# shellcheck disable=SC2086
build release $options -- meterfirst meterfirst-cli || { echo "The build failed." >&2; exit 1; }
if [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ]; then
    say "Starting the window"
    exec build/release/app/meterfirst "$@"
fi
say "No display here, so the walk in the terminal"
exec build/release/app/meterfirst-cli walk "$@"
