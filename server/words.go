package main

import (
	"encoding/json"
	"strings"
	"sync"

	"tidysump/specs"
)

// words is the English catalogue: word id -> sentence.
var words = sync.OnceValue(func() map[string]string {
	var list map[string]string
	if err := json.Unmarshal(specs.WordsEN, &list); err != nil {
		panic(err) // the catalogue is embedded: a test has read it
	}
	return list
})

// say fills the values into a sentence of the catalogue; "" if it has no such
// sentence.
func say(id string, values map[string]string) string {
	var pairs []string
	for name, value := range values {
		pairs = append(pairs, "{"+name+"}", value)
	}
	return strings.NewReplacer(pairs...).Replace(words()[id])
}
