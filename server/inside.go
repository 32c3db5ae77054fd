//go:build inside

package main

import _ "embed" // for the archive

// inside is the built site, as `make build` puts it here: the tag "inside" is what
// asks for it, so that all else compiles without it.
//
//go:embed site.zip
var inside []byte
