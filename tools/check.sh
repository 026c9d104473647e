#!/bin/sh
# Installs what the tests need, then runs them all. On Debian and its kin it installs with
# apt-get, as root or through sudo; where it may not, it names the checks that are left out.
set -u
cd "$(dirname "$0")/.." || exit 1

missing=""
need() { command -v "$1" >/dev/null 2>&1 || missing="$missing $2"; }
need make make
need gcc "gcc libc6-dev"
need node nodejs
need npm npm
need chromium chromium
need pdftoppm poppler-utils
need rsvg-convert librsvg2-bin
need zbarimg zbar-tools
need fribidi libfribidi-bin
need hb-shape libharfbuzz-bin
need glpsol glpk-utils
need git git

if [ -n "$missing" ]; then
	root=""
	[ "$(id -u)" = 0 ] || root="sudo -n"
	if command -v apt-get >/dev/null 2>&1 && { [ -z "$root" ] || $root true 2>/dev/null; }; then
		$root apt-get update -qq &&
			$root env DEBIAN_FRONTEND=noninteractive apt-get install -y -qq --no-install-recommends $missing >/dev/null ||
			echo "check: could not install:$missing"
	else
		echo "check: not installed, and no leave to install:$missing"
		echo "check: what needs them is left out: race tests (gcc), cross-checks (node, npm), browser tests (chromium), pictures (rsvg-convert), paper (pdftoppm, zbarimg, fribidi, hb-shape), the solver's second opinion (glpsol)"
	fi
fi
if ! command -v make >/dev/null 2>&1; then
	echo "check: without make: format, lint, race, browser tests, planted faults and torture are left out"
	exec go test ./...
fi
exec make --no-print-directory check
