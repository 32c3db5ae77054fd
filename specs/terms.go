package specs

import "embed"

//go:embed terms/*.json
var terms embed.FS

// Terms gives the terms of the trade, name of file to JSON text.
func Terms() map[string][]byte { return files(terms, "terms") }
