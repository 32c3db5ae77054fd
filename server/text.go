package main

import (
	"encoding/json"
	"strings"
)

// finding is a finding as JSON, with the sentence that a script's author reads.
type finding struct {
	Code   string            `json:"code"`
	Where  string            `json:"where"`
	Grade  string            `json:"grade"`
	Values map[string]string `json:"values,omitempty"`
	Text   string            `json:"text,omitempty"`
}

type findings struct {
	Findings []finding `json:"findings"`
}

// sentence says what a finding says and, where the catalogue knows, what to do.
func (f finding) sentence() string {
	if strings.HasPrefix(f.Code, "http.") {
		return say(f.Code, f.Values)
	}
	id := "finding." + f.Code
	return strings.TrimSpace(say(id, f.Values) + " " + say(id+".do", f.Values))
}

// withText adds to each finding of an answer its sentence.
func withText(out []byte) []byte {
	var f findings
	if err := json.Unmarshal(out, &f); err != nil {
		return out
	}
	for i := range f.Findings {
		f.Findings[i].Text = f.Findings[i].sentence()
	}
	with, err := json.Marshal(f)
	if err != nil {
		return out
	}
	return with
}
