#!/bin/sh
# Runs the named make targets one after the other, says how long each took, and stops at the first that fails.
set -u
begun=$(date +%s)
for stage in "$@"; do
	start=$(date +%s)
	echo "== $stage"
	make --no-print-directory "$stage" || { echo "== $stage FAILED"; exit 1; }
	echo "== $stage: $(($(date +%s) - start)) s"
done
echo "== all: $(($(date +%s) - begun)) s"
