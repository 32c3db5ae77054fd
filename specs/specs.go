// Package specs embeds the sample cards, the schema of the card format, the
// word catalogue and the description of the operations. It is for the server,
// the site build and the tests: the WebAssembly core gets its data from the
// page, since linking embed would cost it more than all the data.
package specs

import (
	"bytes"
	"embed"
	"path"
)

//go:embed cards/*.json
var cards embed.FS

// CardSchema is the JSON Schema (2020-12) of the card format.
//
//go:embed card.schema.json
var CardSchema []byte

// Entries is the table of what a card may say and of the parts and layouts that
// a new card begins with, for the page's editor.
//
//go:embed entries.json
var Entries []byte

// Faults is the table of what can go wrong, for the operation "fault".
//
//go:embed faults.json
var Faults []byte

// Cards gives the sample cards, name of file to JSON text.
func Cards() map[string][]byte { return files(cards, "cards") }

func files(from embed.FS, folder string) map[string][]byte {
	entries, err := from.ReadDir(folder)
	if err != nil {
		panic(err) // the folder is embedded: it is always there
	}
	list := make(map[string][]byte, len(entries))
	for _, e := range entries {
		text, err := from.ReadFile(path.Join(folder, e.Name()))
		if err != nil {
			panic(err)
		}
		list[e.Name()] = text
	}
	return list
}

// Samples gives all sample cards as one JSON array, in the order of their file
// names.
func Samples() []byte {
	entries, err := cards.ReadDir("cards")
	if err != nil {
		panic(err)
	}
	all := Cards()
	texts := make([][]byte, 0, len(entries))
	for _, e := range entries {
		texts = append(texts, bytes.TrimSpace(all[e.Name()]))
	}
	return append(append([]byte("["), bytes.Join(texts, []byte(","))...), ']')
}
