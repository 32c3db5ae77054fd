package oil

import (
	"slices"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/quantity"
)

// told is what a label was read as, for a row below.
func told(l Label) string {
	var list []string
	for _, g := range l.Grades {
		list = append(list, g.String())
	}
	list = append(append(append(list, l.Marks...), l.Service...), l.Other...)
	if l.Conserving {
		list = append(list, "RC")
	}
	if l.None {
		list = append(list, None)
	}
	if l.Unread != "" {
		list = append(list, "? "+l.Unread)
	}
	return strings.Join(list, " ")
}

func TestReadLabel(t *testing.T) {
	for _, c := range []struct{ text, want string }{
		{"", ""},
		{"none", None},
		// Grades: SAE J300, J306.
		{"10W-40", "10W-40"},
		{"SAE 10W40", "10W-40"},
		{"sae 10w-40", "10W-40"},
		{"SAE10W40", "10W-40"},
		{"10 w 40", "10W-40"},
		{"10W 40", "10W-40"},
		{"10 W - 40", "10W-40"},
		{"10w/40", "10W-40"},
		{"10W‐40", "10W-40"}, {"10W‑40", "10W-40"}, {"10W–40", "10W-40"}, {"10W—40", "10W-40"}, {"10W−40", "10W-40"}, {"10W\u00a0-\u00a040", "10W-40"},
		{"10W-40 / 15W-50", "10W-40 15W-50"},
		{"10W-40/15W-50", "10W-40 15W-50"},
		{"10w40 20w50", "10W-40 20W-50"},
		{"10W-40 or 20W-50", "10W-40 20W-50"},
		{"10W-40, 20W-50; 30", "10W-40 20W-50 30"},
		{"10 w 40 15 w 50", "10W-40 15W-50"},
		{"10W-30/40", "10W-30 10W-40"},
		{"10W/15W-40", "10W 15W-40"},
		{"SAE 30", "30"},
		{"SAE30", "30"},
		{"SAE 80W90 GL5", "80W-90 GL-5"},
		{"75W-90", "75W-90"},
		{"10W-90", "? 10W-90"},
		{"10W-41", "? 10W-41"},
		{"10W40X", "? 10W40X"},
		{"12W-40", "? 12W-40"},
		// JASO T903 and ISO 24254.
		{"JASO MA2", "MA2"},
		{"jaso ma-2", "MA2"},
		{"JASO MA 2", "MA2"},
		{"JASOMA2", "MA2"},
		{"JASO MA²", "MA2"},
		{"JASO MA/MA2", "MA MA2"},
		{"JASO MA1/2", "MA1 MA2"},
		{"JASO T903:2016 MA2", "MA2"},
		{"JASO T 903:2011 MA", "MA"},
		{"JASO T903-2023: MB", "MB"},
		{"MA2 (JASO T903)", "MA2"},
		{"ISO-L-EMA2 (ISO 24254:2007)", "MA2"},
		{"EMB", "MB"},
		{"MA3", "? MA3"},
		{"MC", "? MC"},
		{"JASO", ""},
		// API 1509.
		{"API SN PLUS/CF", "SN+ CF"},
		{"API SN+", "SN+"},
		{"SN+RC", "SN+ RC"},
		{"sl, cf-4", "SL CF-4"},
		{"SL/CF4", "SL CF-4"},
		{"API CI-4 PLUS / SL", "CI-4+ SL"},
		{"SP-RC", "SP RC"},
		{"SP RC", "SP RC"},
		{"API SP Resource Conserving", "SP RC"},
		{"API SN PLUS, resource-conserving", "SN+ RC"},
		{"API SM Energy Conserving", "SM RC"},
		{"SH/CD Energy Conserving II", "SH CD RC"},
		{"SN-RC/CF", "SN CF RC"},
		{"SM EC", "SM RC"},
		{"API SG or higher", "SG"},
		{"API service SE, SF or SG class", "SE SF SG"},
		{"SPRC", "? SPRC"},
		{"SI", "? SI"}, {"SK", "? SK"}, {"SO", "? SO"}, {"S", "? S"}, // left out of the order
		// ILSAC goes with a category, and means a conserving oil.
		{"ILSAC GF-5", "SN RC"},
		{"API SP, ILSAC GF-6A", "SP RC"},
		{"GF-6A/6B", "SP RC"},
		{"GF-6A/B", "SP RC"},
		{"ILSAC GF7A", "SQ RC"},
		{"GF-8", "? GF-8"},
		// ACEA is not compared.
		{"API SN/CF, ACEA A3/B4", "SN CF A3 B4"},
		{"ACEA C3-12", "C3"},
		// Gears.
		{"GL5", "GL-5"},
		{"GL-4/5", "GL-4 GL-5"},
		{"gl-4/gl-5", "GL-4 GL-5"},
		{"API GL-4+", "GL-4"},
		{"GL 5 hypoid gear oil", "GL-5"},
		{"GL-7", "? GL-7"},
		// Two-stroke oils.
		{"JASO FD", "FD"},
		{"JASO M345:2003 FC", "FC"},
		{"API TC", "TC"},
		{"API TC+", "TC"},
		{"TC-W3", "TC-W3"}, {"NMMA TCW3", "TC-W3"}, {"TC-WII", "TC-W2"},
		{"ISO-L-EGD", "EGD"},
		{"2T", "2T"}, {"two-stroke oil", "2T"}, {"2-Stroke", "2T"},
		{"FA-4", "FA-4"}, // of diesel engines
		{"SF 4T", "SF"}, {"CF 4T", "CF"},
		// A whole label.
		{"SAE 10W-40 4T API SL JASO MA2 fully synthetic motorcycle oil", "10W-40 MA2 SL"},
		{"4-stroke\n10W-50\nJASO T903:2016 MA2\nAPI SN", "10W-50 MA2 SN"},
		// What is not understood is told as it was written, as one piece.
		{"JASO MA2 Blue Label", "MA2 ? Blue Label"},
		{"Blue MA2 Label", "MA2 ? Blue, Label"},
		{"20W-50", "20W-50"},
		{"\xff", "? \ufffd"},
		{"MÄ", "? MÄ"},
	} {
		if got := told(ReadLabel(c.text)); got != c.want {
			t.Errorf("%q read as %q, want %q", c.text, got, c.want)
		}
	}
}

// allGrades are the grades of J300 and J306, with each part alone and every pair of parts.
func allGrades() []Grade {
	var list []Grade
	for _, winter := range winterNames {
		for _, summer := range summerNames {
			if g, ok := gradeOfParts(winter, summer); ok {
				list = append(list, g)
			}
		}
	}
	return list
}

// allWords are the marks and categories that are published.
func allWords() []string { return slices.Concat(Marks, twoStroke, petrol, diesel, gears) }

// dashes are what is printed, typed and pasted between the parts of a word.
var dashes = []string{"-", "", " ", " - ", "‐", "‑", "–", "—", "−", "\u00a0", "- "}

// Every published grade, mark and category reads to itself from every printed form.
func TestReadLabel_EveryPrintedForm(t *testing.T) {
	for _, dash := range dashes {
		for _, cased := range []func(string) string{strings.ToUpper, strings.ToLower} {
			for _, g := range allGrades() {
				for _, before := range []string{"", "SAE ", "SAE"} {
					text := cased(before + strings.ReplaceAll(g.String(), "-", dash))
					if l := ReadLabel(text); told(l) != g.String() {
						t.Errorf("%q read as %q", text, told(l))
					}
				}
			}
			for _, word := range allWords() {
				for _, before := range []string{"", "API ", "JASO ", "API: "} {
					text := cased(before + strings.ReplaceAll(word, "-", dash))
					if l := ReadLabel(text); told(l) != word {
						t.Errorf("%q read as %q", text, told(l))
					}
				}
			}
		}
	}
	for _, line := range ilsac {
		mark, category, _ := strings.Cut(line, "=")
		for _, dash := range dashes {
			if l := ReadLabel("ILSAC " + strings.ReplaceAll(mark, "-", dash)); told(l) != category+" RC" {
				t.Errorf("%s with %q read as %q", mark, dash, told(l))
			}
		}
	}
}

// Whatever stands on a label in whatever order, each word reads to itself, and what is
// not understood is told and takes nothing away.
func TestReadLabel_Together(t *testing.T) {
	grades := allGrades()
	rapid.Check(t, func(t *rapid.T) {
		var text strings.Builder
		var want Label
		for range rapid.IntRange(1, 6).Draw(t, "words") {
			dash := rapid.SampledFrom([]string{"-", "–", ""}).Draw(t, "dash")
			switch rapid.IntRange(0, 3).Draw(t, "kind") {
			case 0:
				g := rapid.SampledFrom(grades).Draw(t, "grade")
				if g.winter == 0 || g.summer == 0 {
					continue // "10W, 40" is two, and "10W 40" one
				}
				want.Grades = append(want.Grades, g)
				text.WriteString(strings.ReplaceAll(g.String(), "-", dash))
			case 1:
				word := rapid.SampledFrom(slices.Concat(Marks, twoStroke)).Draw(t, "mark")
				want.Marks = with(want.Marks, word)
				text.WriteString(strings.ReplaceAll(word, "-", dash))
			case 2:
				word := rapid.SampledFrom(slices.Concat(petrol, diesel, gears)).Draw(t, "category")
				want.Service = with(want.Service, word)
				text.WriteString(strings.ReplaceAll(word, "-", dash))
			case 3:
				want.Unread = strings.TrimPrefix(want.Unread+", Xyz", ", ")
				text.WriteString("Xyz, or")
			}
			text.WriteString(rapid.SampledFrom([]string{", ", " / ", "\n", "; ", " & "}).Draw(t, "between"))
		}
		if got := ReadLabel(text.String()); told(got) != told(want) {
			t.Fatalf("%q read as %q, want %q", text.String(), told(got), told(want))
		}
	})
}

func FuzzLabel(f *testing.F) {
	for _, seed := range []string{"API SN PLUS/CF", "SP-RC", "JASO MA2", "none", ",,/ ", "RC", "\xff", "SN+RC", "CRCRC", "CF-RC-RC", "GF-6A/B", "10W-30/40/50", "++", "MA/1/2"} {
		f.Add(seed)
	}
	f.Fuzz(func(t *testing.T, text string) {
		l := ReadLabel(text)
		again := l
		again.Unread = ""
		if got := told(ReadLabel(strings.ReplaceAll(told(again), " ", ", "))); got != told(again) {
			t.Fatalf("%q gives %q, which gives %q", text, told(again), got)
		}
		for part := range strings.SplitSeq(l.Unread, ", ") {
			if !strings.Contains(quantity.PlainDigits(text), part) {
				t.Fatalf("%q has no %q", text, part)
			}
		}
	})
}
