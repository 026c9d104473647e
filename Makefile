# The manual of daily work. `make check` is the one command; see CONTRIBUTING.md.
GO     ?= go
TOOLS  := -modfile=tools/go.mod
ROUND  := $(GO) test -count=1

# Properties are tried with the same draws each time, so that a test is red or green and
# nothing between; `make fuzz` draws anew.
export RAPID_SEED ?= 1

.PHONY: build check quick fast long format vet lint house test race browser docs faults bench fuzz torture clean

build: ## the program, one static file
	CGO_ENABLED=0 $(GO) build -trimpath -ldflags='-s -w' -o eyeup ./cmd/eyeup

quick: format vet house fast ## what takes a minute: run it while you work

# What works out whole seasons, looks for best plans or serves pages: too slow for `make quick`.
# `go vet` still checks the types of all of it, tests too.
SLOW := season season/check internal/desk internal/page internal/plans internal/planting internal/paper internal/highs internal/faults internal/torture internal/crosscheck internal/house

fast:
	$(GO) test -short -skip 'TestScripts/(season|write)' $$($(GO) list ./... $(foreach room,$(SLOW),| grep -vx eyeup/$(room)))

long: ## what takes longer than a check: every planted fault, torture, new gardens, fuzzing
	@sh tools/long.sh

check: ## everything that must hold before a change lands
	@sh tools/stages.sh format vet lint house test race browser docs faults torture

format:
	@test -z "$$(gofmt -l .)" || { echo "run gofmt -w on:"; gofmt -l .; exit 1; }

vet:
	$(GO) vet ./...

lint:
	$(GO) tool $(TOOLS) staticcheck ./...

house:
	$(ROUND) ./internal/house

test:
	$(GO) test -timeout 20m ./...

# The rooms in which more than one thing happens at a time. Short runs draw less at random; what
# they leave out and runs side by side is named.
RACED := ./season ./season/prove ./solve ./internal/archive ./internal/book ./internal/desk ./internal/garden ./internal/highs ./internal/page ./internal/plans

# Of those, what takes long and does one thing after another.
ALONE := PaidRoom|ProofAgainst|HeatPays|HeatThatNeverPays|CertificatesAddUp|PlainProof|TwelveClumps|EveryPlantIs|Drawn|LoggedCellar|EveryList
ALONE := $(ALONE)|SeasonRepeats|HeatedHouse|CratesOfALot|ReportIsOnePage|NothingIsDropped|IgnoresTheOrder|DecisionsAreRead|PatchFollows
ALONE := $(ALONE)|PatchWithout|ListsAsPages|PolicyIsStrict|LabelsOf|LabelsDue|LabelsAfter|TestPaper|VarietyIsDescribed|BedAndRow
ALONE := $(ALONE)|FourHundred|LinksLead|NamesCantBreak|EveryPageIs|AnAfternoon|SickKin

race:
	@command -v gcc >/dev/null || { echo "left out: race tests, for want of gcc"; test "$$CI" != true; exit; } && \
	$(GO) test -race -short -timeout 20m -skip '$(ALONE)' $(RACED) && \
	$(GO) test -race -timeout 20m -run 'BestIsWhatProveFinds|ProvedPlansHold' ./internal/desk ./internal/plans

browser:
	EYEUP_BROWSER=1 $(ROUND) -run Browser ./...

docs:
	$(ROUND) -run 'Docs' ./cmd/eyeup ./internal/house

faults: ## the quarter whose week it is; `make long` plants them all
	EYEUP_FAULTS=1 $(ROUND) -timeout 30m ./internal/faults

bench: ## the figures of BENCHMARKS.md
	$(GO) test -run '^$$' -bench . -benchmem ./...

fuzz: ## ten seconds for every reader, and new draws for every property
	RAPID_SEED=0 $(GO) test -count=1 ./...
	@sh tools/fuzz.sh

torture: ## kill, cut the power, fill the disk; see docs/book.md
	$(GO) run ./internal/torture -for $${EYEUP_TORTURE:-60s}

clean:
	rm -f eyeup
