#!/bin/sh
# Builds the Debian package of a build folder, unpacks it and looks whether what it brings works from where it lies.
#   packaging/check_package.sh build/release
set -eu
build=$(cd "$1" && pwd)
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
failed=0
check() { # check "what" command...
    what=$1
    shift
    "$@" >"$work/log" 2>&1 || { echo "packaging: $what"; cat "$work/log"; failed=1; }
}

umask 022
(cd "$work" && cpack -G DEB --config "$build/CPackConfig.cmake" -B "$work/out" >"$work/log" 2>&1) || { cat "$work/log"; exit 1; }
deb=$(echo "$work"/out/*.deb)
dpkg-deb -x "$deb" "$work/root"
root=$work/root/usr

for file in bin/meterfirst bin/meterfirst-cli share/applications/org.meterfirst.MeterFirst.desktop \
    share/metainfo/org.meterfirst.MeterFirst.metainfo.xml share/icons/hicolor/scalable/apps/org.meterfirst.MeterFirst.svg \
    share/icons/hicolor/symbolic/apps/org.meterfirst.MeterFirst-symbolic.svg share/man/man1/meterfirst.1.gz \
    share/man/man1/meterfirst-cli.1.gz share/doc/meterfirst/copyright share/doc/meterfirst/changelog.gz \
    share/meterfirst/trees/dryer_elec/appliance.yaml share/meterfirst/resources/texts; do
    check "$file is missing" test -e "$root/$file"
done
check "the package does not ask for Qt's widgets" sh -c "dpkg-deb -f '$deb' Depends | grep -q libqt6widgets6"
check "Exec of the desktop entry is not installed" \
    test -x "$root/bin/$(sed -n 's/^Exec=\([^ ]*\).*/\1/p' "$root/share/applications/org.meterfirst.MeterFirst.desktop")"

# The trees that are read are those beside the program: a mark made there must show.
plainly() { env -i HOME="$work" PATH=/usr/bin:/bin LC_ALL=C.UTF-8 QT_QPA_PLATFORM=offscreen "$@"; }
check "a complaint is missing or cannot be used" \
    sh -c "test \$(env -i HOME='$work' '$root/bin/meterfirst-cli' list | grep -c '^  dryer_elec/') = 9 && ! env -i HOME='$work' '$root/bin/meterfirst-cli' list | grep -q 'has faults'"
sed -i 's/^name:.*/name: Marked by the package check/' "$root/share/meterfirst/trees/dryer_elec/appliance.yaml"
check "meterfirst-cli does not read the trees that are installed with it" \
    sh -c "env -i HOME='$work' '$root/bin/meterfirst-cli' list | grep -q 'Marked by the package check'"
check "meterfirst does not start" plainly "$root/bin/meterfirst" --version
exit $failed
