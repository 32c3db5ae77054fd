package finding_test

import (
	"strings"
	"testing"
	"unicode/utf8"

	"tidysump/internal/finding"
)

// A place is put before each place of a list, or in its stead.
func TestPlaces(t *testing.T) {
	list := append(finding.Refusal("missing", "/id", "name", "id"), finding.Finding{Code: "odd", Where: "/size", Grade: finding.Doubt})
	finding.Below("/card", list)
	if list[0].Where != "/card/id" || list[1].Where != "/card/size" || !finding.Refused(list) || list[0].Values["name"] != "id" {
		t.Errorf("below /card: %+v", list)
	}
	if finding.At("/text", list); list[0].Where != "/text" || list[1].Where != "/text" {
		t.Errorf("at /text: %+v", list)
	}
	if finding.Refused(list[1:]) {
		t.Errorf("a doubt refuses: %+v", list[1:])
	}
}

// A text is clipped at letters and not at bytes, and always fit for JSON.
func TestClip(t *testing.T) {
	for in, want := range map[string]string{
		"":                      "",
		"M12x1.5":               "M12x1.5",
		strings.Repeat("é", 40): strings.Repeat("é", 40),
		strings.Repeat("é", 41): strings.Repeat("é", 40) + "…",
		"a\xffb":                "a\uFFFDb",
	} {
		if got := finding.Clip(in); got != want || !utf8.ValidString(got) {
			t.Errorf("Clip(%q) = %q, want %q", in, got, want)
		}
	}
}
