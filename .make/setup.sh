#!/usr/bin/env bash
# Makes sure that one thing the build needs is here, and installs it only when it is missing.
#
#   .make/setup.sh rust | node | packages | chromium | reference | wasm-bindgen VERSION | trunk VERSION | cargo-deny VERSION | lighthouse
#
# Quiet when all is well; otherwise one sentence with the remedy, and status 1.

set -euo pipefail
cd "$(dirname "$0")/.."

stop() {
  printf 'Batterwright: %s\n' "$1" >&2
  exit 1
}

have() { command -v "$1" >/dev/null 2>&1; }

setup_rust() {
  have rustup || stop "rustup is missing. Install it from https://rustup.rs, open a new shell and run make again."
  have cc || stop "a C compiler is missing, which Rust needs for linking. Install it with: apt-get install build-essential"
  local channel installed
  channel=$(sed -n 's/^channel = "\(.*\)"/\1/p' rust-toolchain.toml)
  installed=$(rustup toolchain list)
  # Asked for by name, because some machines switch off the automatic install by rust-toolchain.toml.
  if ! grep -q "^$channel-" <<<"$installed"; then
    rustup toolchain install "$channel" --profile minimal || stop "Rust $channel could not be installed. Check the network and run: rustup toolchain install $channel"
  fi
  rustup component add --toolchain "$channel" rustfmt clippy 2>/dev/null \
    || stop "rustfmt and clippy for Rust $channel could not be installed. Run: rustup component add --toolchain $channel rustfmt clippy"
  rustup target add --toolchain "$channel" wasm32-unknown-unknown 2>/dev/null \
    || stop "Rust's WebAssembly target could not be installed. Run: rustup target add --toolchain $channel wasm32-unknown-unknown"
}

setup_node() {
  have node || stop "Node.js is missing. Install version 20 or newer with npm from https://nodejs.org and run make again."
  local version
  version=$(node --version)
  version=${version#v}
  [ "${version%%.*}" -ge 20 ] || stop "Node.js $version is too old. Install version 20 or newer from https://nodejs.org and run make again."
  have npm || stop "npm is missing, although Node.js is here. Install it (Debian: apt-get install npm) and run make again."
}

setup_packages() {
  npm ci --no-audit --no-fund --loglevel=error || stop "the npm packages could not be installed. Check the network and run: npm ci"
}

setup_chromium() {
  if have chromedriver && { have chromium || [ -n "${CHROMIUM:-}" ]; }; then
    return
  fi
  local by_hand="Chromium and its driver are missing. Install them with: apt-get install chromium chromium-driver"
  have apt-get || stop "$by_hand (or your system's own way), and run make again."
  local as_root=()
  if [ "$(id -u)" -ne 0 ]; then
    if have sudo && sudo -n true 2>/dev/null; then as_root=(sudo -n); else stop "$by_hand (as root), and run make again."; fi
  fi
  echo "Installing Chromium and its driver from Debian ..."
  "${as_root[@]}" apt-get update -qq || stop "apt-get update failed. $by_hand"
  "${as_root[@]}" env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends chromium chromium-driver >/dev/null \
    || stop "apt-get install failed. $by_hand"
}

# A Python of its own with PHREEQC, HiGHS, IAPWS and a standard atmosphere in it, made again when the pinned versions change.
setup_reference() {
  local folder=target/tools/reference pinned=tests/reference/requirements.txt
  cmp -s "$pinned" "$folder/requirements.txt" && return
  have python3 || stop "Python is missing, which only make reference needs. Install version 3.11 or newer (Debian: apt-get install python3 python3-venv) and run make reference again."
  echo "Making a Python with PHREEQC and its kin under $folder ..."
  python3 -m venv --clear "$folder" || stop "Python has no venv. Install it (Debian: apt-get install python3-venv) and run make reference again."
  "$folder/bin/pip" install --quiet --disable-pip-version-check --requirement "$pinned" \
    || stop "the Python packages could not be installed. Check the network and run: make reference"
  # Copied last, so it tells that everything is in.
  cp "$pinned" "$folder/requirements.txt"
}

# Lighthouse, which only the bench uses: too much for every build to wait for.
setup_lighthouse() {
  local folder=target/tools/lighthouse pinned=tests/bench/lighthouse
  cmp -s "$pinned/package-lock.json" "$folder/done.json" && return
  echo "Installing Lighthouse under $folder ..."
  mkdir -p "$folder"
  cp "$pinned/package.json" "$pinned/package-lock.json" .npmrc "$folder/"
  npm ci --prefix "$folder" --no-audit --no-fund --loglevel=error || stop "Lighthouse could not be installed. Check the network and run: make bench"
  # Copied last, so it tells that everything is in.
  cp "$pinned/package-lock.json" "$folder/done.json"
}

# A cargo program of one exact version: the one on PATH if it fits, else built under target/tools.
# The Makefile puts target/tools/bin first on PATH. Built without optimising: it is half the wait, and the work is small.
setup_program() {
  local package=$1 version=$2 optimise=$3
  shift 3
  local fits=yes name
  for name in "$@"; do
    [ "$("$name" --version 2>/dev/null | awk '{print $2}')" = "$version" ] || fits=no
  done
  [ "$fits" = no ] || return 0
  echo "Building $package $version under target/tools; this takes a few minutes, once ..."
  CARGO_PROFILE_RELEASE_OPT_LEVEL=$optimise CARGO_PROFILE_RELEASE_LTO=off CARGO_PROFILE_RELEASE_CODEGEN_UNITS=16 \
    env -u CARGO_TARGET_DIR cargo install --quiet --locked "$package@$version" --root target/tools --force \
    || stop "$package $version could not be built. Check the network and run: cargo install --locked $package@$version --root target/tools"
}

case ${1:-} in
  rust | node | packages | chromium | reference | lighthouse) "setup_$1" ;;
  wasm-bindgen) setup_program wasm-bindgen-cli "$2" 1 wasm-bindgen wasm-bindgen-test-runner ;;
  trunk) setup_program trunk "$2" 0 trunk ;;
  cargo-deny) setup_program cargo-deny "$2" 0 cargo-deny ;;
  *) stop "setup.sh does not know \"${1:-}\": see its head for what it can set up." ;;
esac
