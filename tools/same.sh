#!/bin/sh
# Compares the answers of two builds: every command in JSON, every file that is written, over
# the invented garden and the example garden. Keys, numbers, dates, codes and counts must be
# the same; sentences may differ.
#
#   tools/same.sh [-prose] [-only REGEXP] BEFORE
#
# BEFORE is a revision, or a built program; -prose lists the sentences that differ; -only takes
# the commands that match, such as 'reckon|schema' (internal/same/commands.txt lists them).
# AFTER is the working tree. What BEFORE answers is kept in the user's cache for the next time.
# It ends with 1 where something differs.
set -eu
usage() { sed -n '2,/^set/s/^# \{0,1\}//p' "$0"; exit 2; }
prose="" only=""
while [ $# -gt 1 ]; do
	case $1 in
	-prose | --prose) prose=-prose ;;
	-only | --only) only=$2 && shift ;;
	*) usage ;;
	esac
	shift
done
[ $# = 1 ] || usage
before=$1
case $before in /*) ;; *) [ ! -x "$before" ] || before=$PWD/$before ;; esac
cd "$(dirname "$0")/.."

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
"$tmp/same" $prose -only "$only" "$before" "$tmp/after"
