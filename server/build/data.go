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
	bikes, err := shownBikes(out)
	if err != nil {
		return nil, err
	}
	data := map[string][]byte{
		"bikes.json":   bikes,
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

// shownBikes takes out of an answer of "cards" what a list shows of a bike: of its oils
// the first, of that its volume in the person's unit and its first grade. The rest would
// weigh on the first screen, which shows none of it.
func shownBikes(answer []byte) ([]byte, error) {
	type oil struct {
		Due struct {
			Texts []string `json:"texts,omitempty"`
		} `json:"due"`
		Grades []string `json:"grades,omitempty"`
	}
	var list struct {
		OK struct {
			Bikes []struct {
				ID       string `json:"id"`
				Name     string `json:"name"`
				Years    string `json:"years,omitempty"`
				Layout   string `json:"layout,omitempty"`
				Invented bool   `json:"invented,omitempty"`
				Oils     []oil  `json:"oils,omitempty"`
				Gaps     int    `json:"gaps,omitempty"`
			} `json:"bikes"`
		} `json:"ok"`
	}
	if err := json.Unmarshal(answer, &list); err != nil {
		return nil, err
	}
	for n := range list.OK.Bikes {
		b := &list.OK.Bikes[n]
		b.Oils = b.Oils[:min(len(b.Oils), 1)]
		for o := range b.Oils {
			of := &b.Oils[o]
			of.Due.Texts = of.Due.Texts[:min(len(of.Due.Texts), 1)]
			of.Grades = of.Grades[:min(len(of.Grades), 1)]
		}
	}
	return json.Marshal(list.OK)
}

// fixedFiles are those that other programs find by name.
func fixedFiles() map[string][]byte {
	return map[string][]byte{"card.schema.json": specs.CardSchema}
}
