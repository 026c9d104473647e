#!/bin/sh
# Freezes two books as this program writes them, for TestFrozenBooks: NAME-garden, put down in
# order, and NAME-crashed, left by a crash. See internal/book/testdata/frozen/README.md.
# Usage: sh tools/freeze.sh NAME, where NAME begins with the number of the book's form, such as form2
set -eu
cd "$(dirname "$0")/.."
name=${1:?say a name that begins with the form, such as form2}
frozen=$PWD/internal/book/testdata/frozen
for folder in "$frozen/$name-garden" "$frozen/$name-crashed"; do
	if [ -e "$folder" ]; then
		echo "$folder is there; frozen books are never written over: give another name" >&2
		exit 1
	fi
done
command -v zstd >/dev/null || { echo "zstd is needed to unpack a record of weather: install it" >&2; exit 1; }
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
go build -o "$work/eyeup" ./cmd/eyeup
eyeup=$work/eyeup

# The invented garden, three years of it; a plan followed with its decisions held; an entry of
# every kind; one undone; a person named and one blanked.
book=$work/garden.book
"$eyeup" book new --demo "$book"
grep '"kind":"decided"' "$frozen/entries.jsonl" | "$eyeup" book add "$book" --json >/dev/null # the last decision written is followed
"$eyeup" season "$book" --today 2027-01-20 --prove --follow --plan 'as early as can be' >/dev/null
"$eyeup" book add "$book" --json <"$frozen/entries.jsonl" >/dev/null
"$eyeup" season "$book" --today 2027-11-16 --follow --plan 'no added heat' >/dev/null
"$eyeup" book undo "$book"
"$eyeup" book people "$book" p2 'Zoë Ångström'
"$eyeup" book people "$book" p3 'Someone'
"$eyeup" book people "$book" p3 --blank

# A garden folder with a record of ten years, which the book keeps as a paper.
folder=$work/folder
mkdir "$folder"
cp internal/opendata/data/example/garden.toml "$folder"
sed 's/^MRMM5,/,/' internal/opendata/data/example/stock.csv >"$folder/stock.csv" # entries.jsonl gives that code
zstd -dqc internal/opendata/data/daily/USC00323621_grand-forks-nd.csv.zst |
	awk -F, 'NR == 1 || $6 < 19970101' >"$folder/weather.csv"
sed -i 's/USC00179151/USC00323621/; s/= 1981/= 1987/; s/= 2010/= 1996/' "$folder/garden.toml"
other=$work/other.book
"$eyeup" book new "$other" --folder "$folder"
"$eyeup" book add "$other" --json <"$frozen/entries.jsonl" >/dev/null

go test -count=1 ./internal/book -run 'TestFreeze$' -freeze "$name-garden" -book "$book"
go test -count=1 ./internal/book -run 'TestFreeze$' -freeze "$name-crashed" -book "$other" -crashed
