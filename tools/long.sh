#!/bin/sh
# What takes longer than `make check` may: all planted faults, torture, gardens drawn anew and
# fuzzing. It goes on after a failure, and writes what came of it to docs/long/DATE.md, which is
# committed; internal/house reads the newest. It takes about an hour and a half.
#
#   EYEUP_FAULTS    which faults are planted: all, or 1 for the quarter of this week (all)
#   EYEUP_TORTURE   how long the book is tortured (10m)
#   FUZZTIME        how long each reader is fuzzed (2m)
#   EYEUP_DRAWN     which gardens are drawn (twenty that no other day draws)
#   EYEUP_LONG_OUT  the folder of the report (docs/long)
set -u
cd "$(dirname "$0")/.." || exit 1
: "${EYEUP_FAULTS:=all}" "${EYEUP_TORTURE:=10m}" "${FUZZTIME:=2m}" "${EYEUP_LONG_OUT:=docs/long}"
days=$(($(date +%s) / 86400))
: "${EYEUP_DRAWN:=$((days * 20))-$((days * 20 + 20))}"
export EYEUP_TORTURE FUZZTIME EYEUP_DRAWN

revision=$(git rev-parse HEAD) || exit 1
[ -z "$(git status --porcelain)" ] || { echo "long: commit first; the report names a revision"; exit 1; }
mkdir -p "$EYEUP_LONG_OUT"
report=$EYEUP_LONG_OUT/$(date +%F).md
log=$(mktemp -d)
red=0

# stage NAME WHAT COMMAND… runs a command and adds its row to the report.
stage() {
	name=$1 what=$2
	shift 2
	start=$(date +%s)
	echo "== $name: $what"
	if "$@" >"$log/$name" 2>&1; then result=green; else
		result=red red=1
		tail -n 40 "$log/$name"
	fi
	echo "== $name: $result, $(($(date +%s) - start)) s (all it said: $log/$name)"
	echo "| $name | $what | $result | $(($(date +%s) - start)) |" >>"$report.part"
}

cat >"$report.part" <<END
# The long run of $(date +%F)

Revision: $revision

| stage | what | result | seconds |
| --- | --- | --- | --- |
END
planted="all planted faults"
[ "$EYEUP_FAULTS" = all ] || planted="a quarter of the planted faults, that of this week"
# The drawn gardens that see some of the faults are the usual ones.
stage faults "$planted" env -u EYEUP_DRAWN EYEUP_FAULTS="$EYEUP_FAULTS" go test -count=1 -timeout 90m ./internal/faults
stage torture "for $EYEUP_TORTURE" go run ./internal/torture -for "$EYEUP_TORTURE"
stage drawn "gardens $EYEUP_DRAWN" go test -count=1 -timeout 60m -run Drawn ./internal/...
stage fuzz "$FUZZTIME for each reader" sh tools/fuzz.sh
mv "$report.part" "$report"
echo "== written to $report; commit it"
exit $red
