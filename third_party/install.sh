#!/bin/bash
# Installs what Beamfork needs and this machine lacks: the packages of the named groups of packages.txt
# (build and run when none is named) and Dear ImGui's source. Running it again does nothing more.
#
#   bash third_party/install.sh [build] [run] [test] [check] [exports]
set -euo pipefail

here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
known=(build run test check exports)

say() { printf 'third_party: %s\n' "$*"; }
die() { printf 'third_party: %s\n' "$*" >&2; exit 1; }

listed() { # the packages of one group
    awk -v group="$1" '$1 == group { print $2 }' "$here/packages.txt"
}

installed() {
    [ "$(dpkg-query --show --showformat='${db:Status-Status}' "$1" 2>/dev/null)" = installed ]
}

as_root() {
    if [ "$(id -u)" -eq 0 ]; then
        "$@"
    elif command -v sudo >/dev/null; then
        sudo "$@"
    else
        die "installing packages needs root or sudo: $*"
    fi
}

command -v dpkg-query >/dev/null || die "this script knows Debian and its relatives only; packages.txt says what to install"

groups=("$@")
[ ${#groups[@]} -gt 0 ] || groups=(build run)
missing=()
for group in "${groups[@]}"; do
    [[ " ${known[*]} " == *" $group "* ]] || die "no group '$group'; the groups are: ${known[*]}"
    for package in $(listed "$group"); do
        installed "$package" || missing+=("$package")
    done
done

if [ ${#missing[@]} -gt 0 ]; then
    say "installing (why each: third_party/packages.txt) ${missing[*]}"
    as_root apt-get -qq -o Acquire::Retries=3 update
    as_root env DEBIAN_FRONTEND=noninteractive apt-get -qq -o Acquire::Retries=3 -o Dpkg::Use-Pty=0 \
        install --yes --no-install-recommends "${missing[@]}" >/dev/null
else
    say "no package is missing (${groups[*]})"
fi
bash "$here/fetch_imgui.sh"
