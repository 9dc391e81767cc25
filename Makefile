# make        builds bin/doorpocket
# make demo   publishes the demonstration fleet and says where to open it
# make test   installs what the tests need and runs them all

GO ?= go
PACKAGES = chromium zbar-tools poppler-utils qpdf units python3-iapws nginx-light rsync git npm
PROGRAMS = chromium zbarimg pdftoppm qpdf units nginx rsync git npm
SUDO := $(shell [ "$$(id -u)" = 0 ] || echo sudo)

export CGO_ENABLED = 0

.PHONY: build demo test check unit lab tools go cross clean

build: go
	$(GO) build -trimpath -o bin/doorpocket ./cmd/doorpocket

demo: build
	@bin/doorpocket publish

test: tools check unit

# Formatting, vet and staticcheck.
check: go
	@test -z "$$(gofmt -l .)" || { echo "gofmt these files:"; gofmt -l .; exit 1; }
	$(GO) vet ./...
	$(GO) tool staticcheck ./...

# Everything else: unit, golden, script, link, browser and scan tests.
unit: go
	$(GO) test -timeout 20m ./...

# What pages cost on a slow phone with a weak signal.
lab: go
	$(GO) test ./build/publication -count 1 -v -run '^(TestFirstView|TestPagesFitOneRoundTrip|TestWholeGuideOpensOffline)$$'

# Debian and npm packages that the tests use; asks for nothing that is already there.
tools:
	@missing=; for p in $(PROGRAMS); do PATH="$$PATH:/usr/sbin" command -v $$p >/dev/null || missing=1; done; \
	/usr/bin/python3 -c 'import iapws' 2>/dev/null || missing=1; \
	if [ -n "$$missing" ]; then $(SUDO) apt-get update -q && \
	DEBIAN_FRONTEND=noninteractive $(SUDO) apt-get install -qy $(PACKAGES); fi
	@[ -d testdata/npm/node_modules ] || npm ci --prefix testdata/npm --no-audit --no-fund --silent

# The Go tool fetches the version that go.mod names, if it is 1.21 or later.
go:
	@command -v $(GO) >/dev/null || { $(SUDO) apt-get update -q && \
	DEBIAN_FRONTEND=noninteractive $(SUDO) apt-get install -qy golang-go; }

# The binaries are static: one for each system.
cross: go
	GOOS=linux   GOARCH=amd64 $(GO) build -trimpath -o bin/doorpocket-linux-amd64 ./cmd/doorpocket
	GOOS=darwin  GOARCH=arm64 $(GO) build -trimpath -o bin/doorpocket-macos-arm64 ./cmd/doorpocket
	GOOS=windows GOARCH=amd64 $(GO) build -trimpath -o bin/doorpocket-windows-amd64.exe ./cmd/doorpocket

clean:
	rm -rf bin site
