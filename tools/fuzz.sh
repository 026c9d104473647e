#!/bin/sh
# Fuzzes every fuzz target for ten seconds (or FUZZTIME).
set -eu
grep -rl --include='*_test.go' '^func Fuzz' . | while read -r file; do
	dir=$(dirname "$file")
	grep -o '^func Fuzz[A-Za-z0-9_]*' "$file" | sed 's/func //' | while read -r target; do
		echo "== $dir $target"
		go test -run '^$' -fuzz "^$target\$" -fuzztime "${FUZZTIME:-10s}" "$dir"
	done
done
