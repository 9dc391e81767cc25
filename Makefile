# make        builds bin/doorpocket
# make demo   publishes the demonstration fleet and says where to open it
# make test   installs what the tests need and runs them all
# make release  static binaries for Linux, macOS and Windows, with their sums

GO ?= go
PACKAGES = chromium zbar-tools poppler-utils qpdf units python3-iapws nginx-light rsync git npm groff-base zsh fish libheif-examples libimage-exiftool-perl
PROGRAMS = chromium zbarimg pdftoppm qpdf units nginx rsync git npm groff zsh fish heif-enc exiftool
SUDO := $(shell [ "$$(id -u)" = 0 ] || echo sudo)

export CGO_ENABLED = 0

.PHONY: build demo test check unit lab tools go release clean

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
	GOOS=windows $(GO) vet ./cmd/...

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

# What is given away: one static binary for each system and processor, and their
# sums. The same source and Go version give the same bytes on any machine.
RELEASES = linux-amd64 linux-arm64 macos-amd64 macos-arm64 windows-amd64 windows-arm64

release: go
	rm -rf bin/release && mkdir -p bin/release
	@set -e; for r in $(RELEASES); do system=$${r%-*}; end=; \
	  case $$system in macos) system=darwin;; windows) end=.exe;; esac; \
	  echo "doorpocket-$$r$$end"; \
	  GOOS=$$system GOARCH=$${r#*-} $(GO) build -trimpath -ldflags=-s -o bin/release/doorpocket-$$r$$end ./cmd/doorpocket; done
	cd bin/release && sha256sum doorpocket-* > SHA256SUMS

clean:
	rm -rf bin site
