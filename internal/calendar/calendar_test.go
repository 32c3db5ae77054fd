package calendar_test

import (
	"strings"
	"testing"
	"unicode/utf8"

	"pgregory.net/rapid"

	"tidysump/internal/calendar"
	"tidysump/internal/date"
)

const stamp = "2026-11-25T10:09:01.000Z"

func write(summary, description string) string {
	f := calendar.Begin("Tidysump", stamp)
	f.Add("one-engine", date.Day(2027, 2, 28), summary, description)
	return f.End()
}

// unfolded reads as section 3.1 of RFC 5545 says: a break and a blank are nothing.
func unfolded(file string) string { return strings.ReplaceAll(file, "\r\n ", "") }

// value gives a property's TEXT value as section 3.3.11 reads it.
func value(t interface{ Fatalf(string, ...any) }, file, name string) string {
	_, rest, ok := strings.Cut(unfolded(file), "\r\n"+name+":")
	if !ok {
		t.Fatalf("no %s in %q", name, file)
	}
	line, _, _ := strings.Cut(rest, "\r\n")
	return strings.NewReplacer(`\\`, `\`, `\;`, ";", `\,`, ",", `\n`, "\n").Replace(line)
}

// A whole day without an end lasts the day (section 3.6.1).
func TestWrite_Days(t *testing.T) {
	file := write("Oil due", "")
	for _, line := range []string{"DTSTART;VALUE=DATE:20270228", "DTSTAMP:20261125T100901Z", "UID:one-engine"} {
		if !strings.Contains(file, "\r\n"+line+"\r\n") {
			t.Errorf("no %q in %q", line, file)
		}
	}
}

// Whatever the text: no line is longer than 75 octets, every one ends in CRLF and
// is whole UTF-8, and the text comes back.
func TestWrite_AnyText(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		text := rapid.StringMatching(`[a-z,;:\\\n" 🛢ü漢]{0,200}`).Draw(t, "text")
		file := write("Oil due", text)
		if rest := strings.ReplaceAll(file, "\r\n", ""); strings.ContainsAny(rest, "\r\n") {
			t.Fatalf("a bare break in %q", file)
		}
		for line := range strings.SplitSeq(file, "\r\n") {
			if len(line) > 75 || !utf8.ValidString(line) {
				t.Fatalf("line of %d octets: %q", len(line), line)
			}
		}
		// The description of the event comes before the alarm's.
		if got := value(t, file, "DESCRIPTION"); got != text {
			t.Fatalf("%q came back as %q", text, got)
		}
	})
}

// Control characters may not stand in a text, and breaks of every kind are one.
func TestWrite_Control(t *testing.T) {
	file := write("a\x00b\x07c\r\nd\re", "")
	if got := value(t, file, "SUMMARY"); got != "abc\nd\ne" {
		t.Errorf("got %q", got)
	}
}
