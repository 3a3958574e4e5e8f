#!/bin/sh
# SPDX-License-Identifier: MIT
# The whole set-up on a bare Debian 12 machine, as root or with sudo, from any folder:
#   sh third_party/start.sh        installs what is missing, builds, opens a demo room
#   sh third_party/start.sh test   installs what is missing, builds, runs every test
set -eu
cd "$(dirname "$0")/.."

what=${1:-open}
case $what in
    open) kinds="build" ;;
    test) kinds="build test" ;;
    *) echo "start.sh: '$what' is neither nothing nor 'test'" >&2; exit 2 ;;
esac

missing_packages() {
    for kind in $kinds; do
        sed -n "s/^$kind //p" third_party/packages.txt
    done | while read -r package; do
        dpkg-query -W -f '${db:Status-Status}' "$package" 2>/dev/null | grep -qx installed ||
            printf '%s ' "$package"
    done
}

as_root() {
    if [ "$(id -u)" -eq 0 ]; then
        "$@"
    elif command -v sudo >/dev/null 2>&1; then
        sudo "$@"
    else
        echo "start.sh: packages are missing ($missing) and this is neither root nor has sudo;" \
             "install them, or run this as root" >&2
        exit 3
    fi
}

command -v dpkg-query >/dev/null 2>&1 || {
    echo "start.sh: this is no Debian; third_party/README.md lists what has to be installed" >&2
    exit 3
}
missing=$(missing_packages)
if [ -n "$missing" ]; then
    echo "Installing: $missing"
    as_root apt-get update -q
    # shellcheck disable=SC2086  # the list is meant to split
    as_root env DEBIAN_FRONTEND=noninteractive \
        apt-get install -y -q --no-install-recommends $missing
fi

tests=OFF
werror=OFF
[ "$what" = test ] && tests=ON
[ -n "${CI:-}" ] && werror=ON
cmake -S . -B build -G Ninja -DRAKELINE_TESTS=$tests -DRAKELINE_WERROR=$werror
cmake --build build

if [ "$what" = test ]; then
    exec ctest --test-dir build --output-on-failure
fi

room=layouts/converted-hall-96.json
if [ -n "${DISPLAY:-}${WAYLAND_DISPLAY:-}" ]; then
    exec build/rakeline "$room"
fi
echo "No display here: the study of the demo room follows, and its picture goes to out/."
mkdir -p out
build/rakeline draw "$room" --view orbit --size 1920x1080 -o out/room.png
build/rakeline draw "$room" --view section --size 1920x1080 -o out/section.png
build/rakeline study "$room"
echo "Pictures: out/room.png, out/section.png"
