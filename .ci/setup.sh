# Sets up the machine for building and testing; sourced by examples/run and tests/run.
#
# Installs the build's packages where apt-get is there, else says what to install, and
# shares one target folder under the user's cache, so that GDAL and PROJ are built once for
# every clone on the machine.

set -euo pipefail

cache="${XDG_CACHE_HOME:-$HOME/.cache}/sillmark"
export CARGO_TARGET_DIR="${CARGO_TARGET_DIR:-$cache/target}"
mkdir -p "$cache"

# need PROGRAM-OR-FILE PACKAGE ...: notes the package where neither is there
missing=()
need() {
    command -v "$1" >/dev/null 2>&1 || [ -e "$1" ] || missing+=("$2")
}

install_missing() {
    [ ${#missing[@]} -eq 0 ] && return 0
    if ! command -v apt-get >/dev/null 2>&1; then
        echo "Please install what these Debian packages hold, then run this again: ${missing[*]}" >&2
        exit 1
    fi
    local as_root=()
    [ "$(id -u)" -eq 0 ] || as_root=(sudo)
    echo "Installing: ${missing[*]}" >&2
    "${as_root[@]}" apt-get update -qq
    "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq "${missing[@]}" >/dev/null
    missing=()
}

need g++ g++
need cmake cmake
need make make
need pkg-config pkg-config
need sqlite3 sqlite3
command -v pkg-config >/dev/null 2>&1 && pkg-config --exists libtiff-4 || missing+=(libtiff-dev)
install_missing

if ! command -v cargo >/dev/null 2>&1; then
    echo "Please install Rust (rustup.rs), then run this again" >&2
    exit 1
fi
