#!/bin/sh
# Builds everything and tests all of it: every test, the engine once more under address and undefined-behaviour sanitizers,
# and a short search for inputs that break the readers. Pictures of every screen are left in build/screens.
#   packaging/test.sh           all of it
#   packaging/test.sh --quick   without the sanitizers and the search
. "$(dirname "$0")/common.sh"

quick=no
[ "${1:-}" != --quick ] || quick=yes
passed=0 failed=0 skipped=0 report=
started=$(date +%s)

# step "name" command...: runs it, goes on if it fails, remembers how it went and how long it took
step() {
    name=$1
    shift
    say "$name"
    from=$(date +%s)
    how=good
    "$@" || how=FAILED
    report="$report$(printf '\n%-52s %5s s  %s' "$name" "$(($(date +%s) - from))" "$how")"
    [ $how = good ]
}

broken() { failed=$((failed + 1)); }

# tests PRESET [ctest options]: adds to the counts
tests() {
    preset=$1
    shift
    junit=$PWD/build/$preset.junit.xml log=build/$preset.tests.log good=yes
    rm -f "$junit"
    ctest --preset "$preset" -j "$(cores)" --output-junit "$junit" "$@" >"$log" 2>&1 || good=no
    grep -vE '^ +Start +[0-9]+: |\.\.+ +Passed ' "$log" || true # what failed, and the closing lines
    [ -f "$junit" ] || { broken; return 1; }
    count() { sed -n "s/.*[^a-z]$1=\"\\([0-9]*\\)\".*/\\1/p" "$junit" | head -n 1; }
    bad=$(count failures) left=$(($(count skipped) + $(count disabled)))
    failed=$((failed + bad)) skipped=$((skipped + left)) passed=$((passed + $(count tests) - bad - left))
    [ $good = yes ]
}

pictures() {
    count=$(find build/screens -name '*.png' 2>/dev/null | wc -l)
    echo "$count pictures in build/screens"
    [ "$count" -gt 0 ]
}

rm -rf build/screens
# a newer compiler knows warnings that nobody here has seen yet
werror=-DMF_WERROR=$(grep -q '^VERSION_CODENAME=bookworm' /etc/os-release && echo ON || echo OFF)
step "Packages" need build test || true
if step "Build" build dev "$werror"; then
    step "Tests" tests dev || true
    step "Pictures of every screen" pictures || broken
else
    broken
fi
if [ $quick = no ]; then
    if step "Build with sanitizers (engine, readers)" build asan "$werror" -- core_programs fuzz_programs; then
        step "Tests with sanitizers" tests asan -L '^(core|store|fuzz)$' || true
    else
        broken
    fi
    need fuzz || true
    if command -v clang++-14 >/dev/null; then
        if step "Build the fuzzers (clang)" build fuzz "$werror" -- fuzz_programs; then
            step "Search for inputs that break the readers" tests fuzz || true
        else
            broken
        fi
    else
        say "No clang++-14 here: no search for new inputs; the known ones were replayed above"
    fi
fi

say "Summary"
printf '%s\n\n' "$report"
[ $failed = 0 ] || for log in build/*/Testing/Temporary/LastTestsFailed.log; do
    [ ! -s "$log" ] || { echo "failed in $log:"; cut -d: -f2 "$log" | sed 's/^/   /'; }
done
echo "In all $((($(date +%s) - started) / 60)) min $((($(date +%s) - started) % 60)) s."
printf '%s passed, %s failed, %s skipped\n' $passed $failed $skipped
[ $failed = 0 ]
