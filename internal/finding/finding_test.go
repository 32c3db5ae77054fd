package finding_test

import (
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

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
		"":                                   "",
		"M12x1.5":                            "M12x1.5",
		strings.Repeat("é", 40):              strings.Repeat("é", 40),
		strings.Repeat("é", 41):              strings.Repeat("é", 40) + "…",
		"a\xffb":                             "a\uFFFDb",
		strings.Repeat("x", 39) + "e\u0301x": strings.Repeat("x", 39) + "…",
		strings.Repeat("x", 38) + "e\u0301x": strings.Repeat("x", 38) + "e\u0301…",
		strings.Repeat("🇩🇪", 30):             strings.Repeat("🇩🇪", 20) + "…",
		"x" + strings.Repeat("🇩🇪", 30):       "x" + strings.Repeat("🇩🇪", 19) + "…",
		strings.Repeat("👩🏽‍🔧", 11):           strings.Repeat("👩🏽‍🔧", 10) + "…",
		strings.Repeat("👩🏽‍🔧x", 11):          strings.Repeat("👩🏽‍🔧x", 8) + "…",
		strings.Repeat("\u0301", 50):         strings.Repeat("\u0301", 40) + "…",
	} {
		if got := finding.Clip(in); got != want || !utf8.ValidString(got) {
			t.Errorf("Clip(%q) = %q, want %q", in, got, want)
		}
	}
}

// However a text is cut, what is left is its beginning up to the end of a character, and
// says that there was more.
func TestCut_AnyText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		parts := rapid.SliceOf(rapid.SampledFrom([]string{"a", "é", "e\u0301", "🛢", "🇩🇪", "👩🏽‍🔧", "\u0915\u093f", "\xf0\x9f", "…", " "})).Draw(t, "parts")
		text, most := strings.Join(parts, ""), rapid.IntRange(0, 30).Draw(t, "most")
		got := finding.Cut(text, most)
		whole := strings.ToValidUTF8(text, "\uFFFD")
		if utf8.RuneCountInString(whole) <= most {
			if got != whole {
				t.Fatalf("Cut(%q, %d) = %q, though it fits", text, most, got)
			}
			return
		}
		head, cut := strings.CutSuffix(got, "…")
		rest, begins := strings.CutPrefix(whole, head)
		if !cut || !begins || utf8.RuneCountInString(head) > most || most > 3 && utf8.RuneCountInString(head) < most-3 {
			t.Fatalf("Cut(%q, %d) = %q", text, most, got)
		}
		if r, _ := utf8.DecodeRuneInString(rest); most > 3 && (strings.ContainsRune("\u0301\u093f\u200d🏽", r) || strings.HasSuffix(head, "\u200d")) {
			t.Fatalf("Cut(%q, %d) = %q, before %q", text, most, got, rest)
		}
	})
}
