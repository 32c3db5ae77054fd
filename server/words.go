package main

import (
	"strings"
	"sync"

	"tidysump/internal/finding"
	"tidysump/specs"
)

// words is the catalogue of the default language: word id -> sentence.
var words = sync.OnceValue(specs.Sentences)

// say fills the values into a sentence of the catalogue; "" if it has no such
// sentence.
func say(id string, values map[string]string) string {
	var pairs []string
	for name, value := range values {
		pairs = append(pairs, "{"+name+"}", value)
	}
	return strings.NewReplacer(pairs...).Replace(words()[id])
}

// sayClipped is say of what a stranger sent: its values are cut short.
func sayClipped(id string, values map[string]string) string {
	clipped := map[string]string{}
	for name, value := range values {
		clipped[name] = finding.Clip(value)
	}
	return say(id, clipped)
}
