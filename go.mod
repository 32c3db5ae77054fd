module tidysump

go 1.26.0

require (
	github.com/andybalholm/brotli v1.2.8
	github.com/evanw/esbuild v0.28.2
	github.com/fsnotify/fsnotify v1.10.1
	github.com/go-json-experiment/json v1.27.2
	github.com/gorilla/mux v1.8.1
	github.com/santhosh-tekuri/jsonschema/v6 v6.0.3
	github.com/tdewolff/minify/v2 v2.24.25
	github.com/tdewolff/parse/v2 v2.8.20
	golang.org/x/crypto v0.59.0
	golang.org/x/crypto/x509roots/fallback v0.0.0-20261030153154-30a33513ff6d
	golang.org/x/net v0.62.0
	pgregory.net/rapid v1.3.0
)

require (
	github.com/BurntSushi/toml v1.4.1-0.20240526193622-a339e1f7089c // indirect
	github.com/go-jose/go-jose/v4 v4.1.8 // indirect
	github.com/letsencrypt/challtestsrv v1.4.2 // indirect
	github.com/letsencrypt/pebble/v2 v2.10.3 // indirect
	github.com/miekg/dns v1.1.62 // indirect
	golang.org/x/exp/typeparams v0.0.0-20231108232855-2478ac86f678 // indirect
	golang.org/x/mod v0.42.0 // indirect
	golang.org/x/sync v0.25.0 // indirect
	golang.org/x/sys v0.50.0 // indirect
	golang.org/x/text v0.44.0 // indirect
	golang.org/x/tools v0.52.0 // indirect
	honnef.co/go/tools v0.8.2 // indirect
)

ignore ./static/node_modules

tool (
	github.com/letsencrypt/pebble/v2/cmd/pebble
	github.com/letsencrypt/pebble/v2/cmd/pebble-challtestsrv
	honnef.co/go/tools/cmd/staticcheck
)
