#!/bin/bash
# Fetches Dear ImGui from Debian's source package and unpacks it below third_party/.cache.
# The mirror is the one this machine's apt already uses; the system's package lists stay untouched.
# Nothing is fetched when the cache already holds the right tarball.
set -euo pipefail

suite=trixie
version=1.90.1
tarball=imgui_${version}+ds.orig.tar.xz
sha256=ecce377df0f90b292f15dcbd83d438bddc162b2388c881132bde18c787572a1c
here=$(cd "$(dirname "${BASH_SOURCE[0]}")" && pwd)
cache=$here/.cache
sources=$cache/imgui-$version

say() { printf 'third_party: %s\n' "$*"; }
die() { printf 'third_party: %s\n' "$*" >&2; exit 1; }
intact() { [ -f "$cache/$tarball" ] && echo "$sha256  $cache/$tarball" | sha256sum --check --status; }

# The Debian archive in this machine's apt configuration, whichever of its two formats that is in: the
# main archive (label Debian), or before the first "apt-get update" the first one listed.
archive() {
    apt-get indextargets --format '$(REPO_URI)|$(LABEL)' 'Created-By: Packages' |
        awk -F'|' '!first { first = $1 } $2 == "Debian" && !main { main = $1 }
                   END { print main ? main : first }'
}

download() {
    local uri keyring=/usr/share/keyrings/debian-archive-keyring.gpg
    uri=$(archive)
    [ -n "$uri" ] || die "apt on this machine lists no archive to fetch Dear ImGui's source from"
    say "fetching $tarball from Debian's $suite sources"
    work=$(mktemp -d)
    trap 'rm -rf "$work"' EXIT
    mkdir -p "$work/lists/partial" "$work/cache/archives/partial"
    printf 'Types: deb-src\nURIs: %s\nSuites: %s\nComponents: main\n' "$uri" "$suite" \
        >"$work/debian.sources"
    [ ! -f "$keyring" ] || printf 'Signed-By: %s\n' "$keyring" >>"$work/debian.sources"
    local apt=(apt-get -qq -o Dir::Etc::sourcelist="$work/debian.sources"
        -o Dir::Etc::sourceparts=/nonexistent -o Dir::State::lists="$work/lists"
        -o Dir::Cache="$work/cache" -o APT::Sandbox::User="$(id -un)" -o Acquire::Retries=3)
    (cd "$work" && "${apt[@]}" update && "${apt[@]}" source --download-only --tar-only imgui)
    [ -f "$work/$tarball" ] || die "the archive's $suite no longer holds $tarball"
    mkdir -p "$cache"
    mv "$work/$tarball" "$cache/$tarball"
}

intact || download
intact || die "$cache/$tarball has the wrong SHA-256; delete it and try again"
if [ ! -d "$sources" ]; then
    say "unpacking $tarball"
    rm -rf "$sources.part"
    mkdir "$sources.part"
    tar --extract --file "$cache/$tarball" --directory "$sources.part" --strip-components=1
    mv "$sources.part" "$sources"
fi
