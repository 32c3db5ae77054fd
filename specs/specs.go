// Package specs embeds the sample cards, the schema of the card format, the
// word catalogue and the description of the operations. It is for the server,
// the site build and the tests: the WebAssembly core gets its data from the
// page, since linking embed would cost it more than all the data.
package specs

import (
	"bytes"
	"embed"
	"encoding/json"
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

//go:embed words/*.json
var words embed.FS

// Words gives the English word catalogue in its parts, name of file to JSON
// text: an object from word id to sentence, placeholders in braces. "en.json" is
// what the first screen and the job say; each other part belongs to screens that
// load it when they are opened.
func Words() map[string][]byte { return files(words, "words") }

// Faults is the table of what can go wrong, for the operation "fault".
//
//go:embed faults.json
var Faults []byte

// EN gives the whole English catalogue.
func EN() map[string]string {
	var list map[string]string
	for _, text := range Words() {
		if err := json.Unmarshal(text, &list); err != nil {
			panic(err) // the catalogue is embedded: a test has read it
		}
	}
	return list
}

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
