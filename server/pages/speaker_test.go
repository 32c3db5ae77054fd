package pages

import (
	"testing"

	"tidysump/specs"
)

// A value that is a sentence brings its own end: the sentence round it sets no second one.
func TestSpeaker_OneStop(t *testing.T) {
	said := specs.Entry{}
	said.Other = "Where: {place}."
	bare := specs.Entry{}
	bare.Other = "Nobody knows where."
	s := newSpeaker(specs.Words()[0])
	s.entries = map[string]specs.Entry{"said": said, "bare": bare}
	for value, want := range map[string]string{
		"under the sump":  "Where: under the sump.",
		"left, 2nd cyl.":  "Where: left, 2nd cyl.",
		"under the sump?": "Where: under the sump?",
		"in front …":      "Where: in front …",
		"@bare":           "Where: Nobody knows where.",
	} {
		if got := s.t("said", values{"place": value}); got != want {
			t.Errorf("%q: %q, want %q", value, got, want)
		}
	}
	if got := s.t("said", values{}); got != "Where: {place}." {
		t.Errorf("without a value: %q", got)
	}
}
