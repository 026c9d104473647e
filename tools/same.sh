#!/bin/sh
# Compares the answers of two builds: every command in JSON, every file that is written, over
# the invented garden and the example garden. Keys, numbers, dates, codes and counts must be
# the same; sentences may differ.
#
#   tools/same.sh [-prose] BEFORE     BEFORE is a revision, or a built program
#
# AFTER is the working tree. What BEFORE answers is kept in the user's cache for the next time.
# The example garden is cmd/eyeup/testdata/example, or the folder that EYEUP_EXAMPLE names;
# its weather must lie in it. It ends with 1 where something differs.
set -eu
prose=""
[ "${1:-}" != -prose ] && [ "${1:-}" != --prose ] || { prose=-prose; shift; }
[ $# = 1 ] || { sed -n '2,/^set/s/^# \{0,1\}//p' "$0"; exit 2; }
before=$1
case $before in /*) ;; *) [ ! -x "$before" ] || before=$PWD/$before ;; esac
cd "$(dirname "$0")/.."
example=${EYEUP_EXAMPLE:-cmd/eyeup/testdata/example}
[ -f "$example/garden.toml" ] || { echo "same: there is no example garden in $example; name its folder by EYEUP_EXAMPLE"; exit 2; }

tmp=$(mktemp -d)
tidy() { git worktree remove --force "$tmp/tree" 2>/dev/null || true; rm -rf "$tmp"; }
trap tidy EXIT
trap 'exit 2' INT TERM
build() { (cd "$1" && CGO_ENABLED=0 go build -trimpath -buildvcs=false -o "$2" "$3"); }

if [ ! -f "$before" ] || [ ! -x "$before" ]; then
	git worktree add --quiet --detach "$tmp/tree" "$before"
	build "$tmp/tree" "$tmp/before" ./cmd/eyeup
	before=$tmp/before
fi
build . "$tmp/after" ./cmd/eyeup
build . "$tmp/same" ./internal/same
"$tmp/same" $prose -example "$example" "$before" "$tmp/after"
