#!/bin/sh
# What must hold of every commit. Install once:  git config core.hooksPath tests/lint/hooks
# Over every file, by hand:                      tests/lint/pre-commit.sh --all
set -eu
cd "$(git rev-parse --show-toplevel)"
failed=0
check() { # check "what to do" command...: runs it, goes on, remembers
    what=$1
    shift
    "$@" || { echo "pre-commit: $what" >&2; failed=1; }
}
if [ "${1:-}" = --all ]; then
    cpp=$(git ls-files -- '*.h' '*.cpp')
else
    cpp=$(git diff --cached --name-only --diff-filter=ACMR -- '*.h' '*.cpp')
    check "take out the trailing space or the conflict mark" git diff --cached --check
fi
# file names here have no spaces: check_source would have said so
# shellcheck disable=SC2086
[ -z "$cpp" ] || check "run clang-format-14 -i on them" clang-format-14 --dry-run --Werror $cpp
check "a layer is crossed" python3 tests/lint/check_layers.py .
check "see above" python3 tests/lint/check_source.py .
exit $failed
