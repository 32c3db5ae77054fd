# Needs Go, Node with npm, and make. The tests need GNU units, a Chromium, pdftotext
# and other engines too, which the scripts in .ci find or install.

SHELL := /bin/bash
NODE_MODULES := static/node_modules/.package-lock.json
PURE = $(shell GOOS=js GOARCH=wasm go list ./internal/... | grep -v /internal/site)
WASM_EXEC = $(shell go env GOROOT)/lib/wasm
PAGE_TESTS = $(shell find static/app static/style static/test -name '*.test.js' \
	-not -path '*/browser/*' -not -path '*/engines/*' -not -path '*/compat/built*' | sort)
BUILT_TESTS := static/test/compat/built.test.js
BROWSER_TESTS = $(wildcard static/test/browser/*.test.js)
ENGINE_TESTS = $(wildcard static/test/engines/*.test.js)
PRETTY := static/app static/style static/sw.js static/test static/eslint.config.js
NODE_TEST := node static/test/run.js

.DELETE_ON_ERROR:
.PHONY: serve watch watcher watched test test-one soak soak-memory bench dist lighthouse stories pictures build site core types terms format \
	check-go check-page test-go test-go-bare test-wasm test-page test-units test-built test-browser test-engines engines-table released-backup clean

# Builds the program and serves the page on http://localhost:8080.
serve: build
	build/tidysump

# Serves the page on http://localhost:8081 while one works on it: what changed is built
# anew, and every page that is open loads again.
watch: watcher $(NODE_MODULES)
	build/watch

watcher:
	go build -trimpath -o build/watch ./server/watch

# What watch builds first when anything but the page has changed.
watched: core build/licences.txt $(NODE_MODULES)
	go build -trimpath -o build/builder ./server/build
	go build -trimpath -o build/server ./server

# Everything that must hold before a change goes in. All of it runs, whatever fails;
# what failed, and how to run it alone, comes last.
test:
	@node static/test/all.js check-go test-go test-wasm test-page test-built test-browser test-engines

# One test, with what it needs built before it:
#   make test-one T=TestDensity                    a test of Go, wherever it is
#   make test-one T=TestOps_Examples/check-card     one case of it
#   make test-one T=./internal/oil                 the tests of a package
#   make test-one T=./internal/oil:TestDensity     one of them
#   make test-one T=wasm:./internal/oil            the same, as the page runs it
#   make test-one T=merge                          a test file of the page, by its name
#   make test-one T=browser/tabs                   one that needs a browser
#   make test-one T='engines/driver:webkit'         one that needs all engines
#   make test-one T='merge:the order of two'        those of it whose names begin so
test-one:
	@node static/test/one.js

# Kills browser, page, core and service worker at random moments while a person works,
# and looks for all that was kept: make soak MINUTES=20 SEED=7
soak: build
	CHROMIUM="$$(.ci/chromium)" node static/test/soak/soak.js $(or $(MINUTES),10) $(SEED)

# What page and core hold while a person uses them for long, and whether it grows:
# make soak-memory MINUTES=60 SEED=7
soak-memory: build
	CHROMIUM="$$(.ci/chromium)" node static/test/soak/soak-memory.js $(or $(MINUTES),10) $(SEED)

# What it costs: the core natively and as WebAssembly, the bytes, the start, the
# server beside nginx.
bench: build
	CHROMIUM="$$(.ci/chromium)" WRK="$$(.ci/program wrk wrk)" \
	NGINX_PATH="$$(.ci/program "nginx-light libnginx-mod-http-brotli-static" nginx /usr/sbin/nginx)" \
		node static/test/bench.js

# The site as files for a static host, in dist/.
dist: build
	rm -rf dist
	build/tidysump -export dist

# Scores of the built page; the report is build/lighthouse.html.
lighthouse: build
	CHROMIUM="$$(.ci/chromium)" node static/test/lighthouse.js

# Every screen in every state that the browser tests know, as pictures in all looks
# and live, on http://localhost:8082; STORY=text makes those whose names hold the text.
stories: build
	CHROMIUM="$$(.ci/chromium)" node static/test/stories.js "$(STORY)"

# Draws the icons from icon.svg, and the manifest's screenshots from the page, each
# with as few bytes as it can have.
pictures: $(NODE_MODULES)
	CHROMIUM="$$(.ci/chromium)" node static/test/draw-pictures.js
	$(MAKE) build
	CHROMIUM="$$(.ci/chromium)" node static/test/draw-pictures.js site
	go run ./internal/site/palette static/icons/*.png

# The types of the core's operations, for the page.
types:
	mkdir -p build
	go run ./internal/declare > build/core.d.ts
	mv build/core.d.ts static/app/core/

# The terms of the trade, from specs/terms, as the core has them linked in.
terms:
	go run ./internal/terms

# build/tidysump: the one file to run, with the built site inside.
build: site
	CGO_ENABLED=0 go build -trimpath -tags=inside -ldflags='-s -w -buildid=' -o build/tidysump ./server

# The built site as one archive, where the server's program takes it in.
site: core build/licences.txt $(NODE_MODULES)
	go build -trimpath -o build/builder ./server/build
	build/builder

# The core as WebAssembly, with the compiler's own glue beside it. Without
# inlining (-l) it compresses a tenth smaller, with the older of Go's two garbage
# collectors, where this Go still has it, by 9 kB; DEVELOPERS.md has the figures.
core: export GOEXPERIMENT = $(shell GOEXPERIMENT=nogreenteagc go env GOEXPERIMENT 2>/dev/null)
core:
	mkdir -p build
	GOOS=js GOARCH=wasm go build -trimpath -gcflags=all=-l -ldflags='-s -w -buildid=' -o build/core.wasm ./wasm
	cp "$(WASM_EXEC)/wasm_exec.js" build/

# The licences of what is in the app, which ask to go with it.
build/licences.txt: go.mod $(NODE_MODULES)
	mkdir -p build
	for file in "$$(go env GOROOT)/LICENSE" \
		static/node_modules/lit-html/LICENSE static/node_modules/idb/LICENSE \
		static/node_modules/uqr/LICENSE; \
		do cat "$$file"; echo; done > $@

# The npm packages that the lock file names.
$(NODE_MODULES): static/package.json static/package-lock.json
	cd static && npm ci
	touch $@

# Gives Go and the page's modules the form that check-go and check-page ask for.
format: $(NODE_MODULES)
	gofmt -w internal server specs wasm
	static/node_modules/.bin/prettier --log-level=warn --write $(PRETTY)

# Form and common mistakes in Go.
check-go:
	@unformatted="$$(gofmt -l internal server specs wasm)"; \
	if [ -n "$$unformatted" ]; then echo "make format, for:" $$unformatted; exit 1; fi
	go vet ./...
	GOOS=js GOARCH=wasm go vet ./wasm
	go tool staticcheck ./...

# The Go tests; those of the server build the real page, those of units ask GNU
# units.
test-go: core build/licences.txt $(NODE_MODULES)
test-go test-go-bare:
	GNU_UNITS="$$(.ci/program units units)" go test $${GO_RUN:+-run "$$GO_RUN"} $(or $(PACKAGES),./...)

# The core's tests once more, as the page runs it.
test-wasm:
	GOOS=js GOARCH=wasm go test -exec="$(WASM_EXEC)/go_js_wasm_exec" $${GO_RUN:+-run "$$GO_RUN"} $(or $(PACKAGES),$(PURE))

# The page's modules without a browser, their form and their types. Some ask the
# core.
test-page: check-page test-units

check-page: $(NODE_MODULES)
	@static/node_modules/.bin/prettier --check $(PRETTY) || { echo "make format does so."; exit 1; }
	cd static && node_modules/.bin/eslint .
	static/node_modules/.bin/tsc -p static
	static/node_modules/.bin/tsc -p static/tsconfig.ground.json
	static/node_modules/.bin/tsc -p static/tsconfig.worker.json

test-units: core $(NODE_MODULES)
	$(NODE_TEST) $(PAGE_TESTS)

# The built page, held against the data on browsers for the oldest versions promised.
test-built: build
	$(NODE_TEST) $(BUILT_TESTS)

# The built page in a real browser.
test-browser: build watcher
	CHROMIUM="$$(.ci/chromium)" PDFTOTEXT="$$(.ci/program poppler-utils pdftotext)" \
	CERTUTIL="$$(.ci/program libnss3-tools certutil)" OPENSSL="$$(.ci/program openssl openssl)" \
		$(NODE_TEST) --test-concurrency=1 $(BROWSER_TESTS)

# The built page in all engines that can be had here. Where CI=true, that is all of
# them; elsewhere the end says which were left out.
test-engines: build
	CHROMIUM="$$(.ci/chromium)" ENGINE_PROGRAMS="$$(.ci/engines)" \
		$(NODE_TEST) --test-concurrency=1 $(ENGINE_TESTS)

# Writes what the last test-engines saw into the tables of README.md and DEVELOPERS.md.
engines-table: $(NODE_MODULES)
	node static/test/engines/write-tables.js

# Writes the backup of the version that stands first in static/changelog.json, for
# those to come: testdata/backups/VERSION.jsonl.gz.
released-backup: build
	CHROMIUM="$$(.ci/chromium)" $(NODE_TEST) static/test/release/write-backup.js

# Takes away all that was built.
clean:
	rm -rf build dist static/node_modules server/site.zip
