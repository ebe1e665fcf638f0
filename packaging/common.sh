# Read by run.sh and test.sh: the source folder, progress lines, packages, the build.
set -eu
cd "$(dirname "$0")/.."
PACKAGES=packaging/packages.debian

say() { printf '\n== %s\n' "$*"; }

# missing GROUP...: what is not installed, alternatives with their bar
missing() {
    dpkg-query -W -f='${Package} ${Status}\n' | awk -v groups=" $* " '
        FNR == NR { if (/ok installed$/) have[$1] = 1; next }
        index(groups, " " $1 " ") {
            found = 0
            for (i = split($2, names, "|"); i > 0; --i) if (names[i] in have) found = 1
            if (!found) print $2
        }' - $PACKAGES
}

# known NAMES: the first of them that this system's package lists have
known() {
    for name in $(echo "$1" | tr '|' ' '); do
        if apt-cache show "$name" >/dev/null 2>&1; then echo "$name"; return; fi
    done
    echo "$1" | cut -d'|' -f1
}

# as_root COMMAND...: directly or by sudo
as_root() {
    if [ "$(id -u)" = 0 ]; then "$@"
    elif command -v sudo >/dev/null; then sudo "$@"
    else echo "This needs root: $*" >&2; return 1
    fi
}

# need GROUP...: installs what is missing of these groups; touches no network if nothing is
need() {
    if ! command -v dpkg-query >/dev/null; then
        echo "This is no Debian: what $PACKAGES lists has to be there under the names used here."
        return 0
    fi
    wanted=$(missing "$@")
    [ -n "$wanted" ] || return 0
    say "Installing what is missing (apt-get):"
    for names in $wanted; do
        awk -v names="$names" '$2 == names { why = $3; for (i = 4; i <= NF; ++i) why = why " " $i
                                             printf "   %-28s %s\n", names, why }' $PACKAGES
    done
    as_root apt-get update -qq || return 1
    chosen=$(for names in $wanted; do known "$names"; done)
    # shellcheck disable=SC2086
    as_root env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $chosen >build/packages.log 2>&1 ||
        { tail -n 20 build/packages.log >&2; return 1; }
}

# One compiler takes up to 1.5 GB.
cores() {
    memory=$(awk '/MemAvailable/ { print int($2 / 1500000) }' /proc/meminfo 2>/dev/null || echo 1)
    count=$(nproc)
    [ "${memory:-1}" -ge "$count" ] || count=$memory
    [ "$count" -ge 1 ] || count=1
    echo "$count"
}

# build PRESET [cmake options... -- targets...]: shows ninja's counter at a terminal, otherwise only what went wrong
build() {
    preset=$1 log=build/$1.log options=
    shift
    while [ $# -gt 0 ] && [ "$1" != -- ]; do options="$options $1"; shift; done
    [ $# -eq 0 ] || shift
    # shellcheck disable=SC2086
    cmake --preset "$preset" $options >"$log" 2>&1 || { tail -n 40 "$log" >&2; return 1; }
    if [ -t 1 ]; then
        cmake --build --preset "$preset" --parallel "$(cores)" ${1:+--target "$@"}
    else
        cmake --build --preset "$preset" --parallel "$(cores)" ${1:+--target "$@"} >"$log" 2>&1 ||
            { grep -A 40 -m 1 '^FAILED' "$log" >&2 || tail -n 40 "$log" >&2; return 1; }
    fi
}
mkdir -p build
