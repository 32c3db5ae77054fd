package main

import (
	"encoding/json"
	"fmt"
	"os"
	"path/filepath"
	"slices"

	"tidysump/internal/core"
	"tidysump/specs"
)

// firstScreen names the data files that the first screen can't do without.
func firstScreen(language string) []string {
	return []string{"bikes.json", wordsFile(language, specs.FirstPart)}
}

// wordsFile names the file of a part of the catalogue.
func wordsFile(language, part string) string { return "words/" + language + "/" + part + ".json" }

// dataFiles makes the data that goes with the page, by file name: the sample
// cards, the list of their bikes as the core draws it up, the words, and the
// licences of what is in the app, which lie beside the core.
func dataFiles(corePath string, languages []specs.Language) (map[string][]byte, error) {
	licences, err := os.ReadFile(filepath.Join(filepath.Dir(corePath), "licences.txt"))
	if err != nil {
		return nil, err
	}
	samples := specs.Samples()
	out, outcome := core.Do("cards", slices.Concat([]byte(`{"cards":`), samples, []byte(`}`)))
	if outcome != core.OK {
		return nil, fmt.Errorf("the sample cards can't be listed: %s", out)
	}
	var answer struct {
		OK json.RawMessage `json:"ok"`
	}
	if err := json.Unmarshal(out, &answer); err != nil {
		return nil, err
	}
	data := map[string][]byte{
		"bikes.json":   answer.OK,
		"entries.json": specs.Entries,
		"licences.txt": licences,
		"samples.json": samples,
		"faults.json":  specs.Faults,
	}
	for _, l := range languages {
		for name, text := range l.Parts {
			if name != specs.SitePart {
				data[wordsFile(l.Tag, name)] = text
			}
		}
	}
	return data, nil
}

// fixedFiles are those that other programs find by name.
func fixedFiles() map[string][]byte {
	return map[string][]byte{"card.schema.json": specs.CardSchema}
}
