package main

import (
	"bytes"
	"encoding/json"
	"strings"
)

// told is a finding as JSON, with the sentence that a script's author reads.
type told struct {
	Code   string            `json:"code"`
	Where  string            `json:"where"`
	Grade  string            `json:"grade"`
	Values map[string]string `json:"values,omitempty"`
	Text   string            `json:"text,omitempty"`
}

type findings struct {
	Findings []told `json:"findings"`
}

// mostTold is how many findings a refusal tells: a small request can be wrong in so
// many places that telling all would cost a hundred times as much.
const mostTold = 100

// sentence says what a finding says and, where the catalogue knows, what to do.
func (f told) sentence() string {
	if strings.HasPrefix(f.Code, "http.") {
		return say(f.Code, f.Values)
	}
	id := "finding." + f.Code
	return strings.TrimSpace(say(id, f.Values) + " " + say(id+".do", f.Values))
}

// withText adds to each finding of a refusal its sentence, and leaves out those that
// are too many.
func withText(out []byte) []byte {
	list, ok := refusal(out)
	if !ok {
		return out
	}
	for i := range list {
		list[i].Text = list[i].sentence()
	}
	with, err := json.Marshal(findings{list})
	if err != nil {
		return out
	}
	return with
}

// refusal reads {"findings":[...]}, no further than it is told.
func refusal(out []byte) ([]told, bool) {
	d := json.NewDecoder(bytes.NewReader(out))
	for _, want := range []json.Token{json.Delim('{'), "findings", json.Delim('[')} {
		if got, err := d.Token(); err != nil || got != want {
			return nil, false
		}
	}
	var list []told
	for d.More() {
		if len(list) == mostTold {
			return append(list, told{Code: "http.more", Where: "/", Grade: "refuse"}), true
		}
		var f told
		if err := d.Decode(&f); err != nil {
			return nil, false
		}
		list = append(list, f)
	}
	return list, true
}
