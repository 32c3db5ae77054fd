// Package calendar writes days to remember as an iCalendar file (RFC 5545).
package calendar

import (
	"strings"
	"unicode/utf8"

	"tidysump/internal/date"
)

// File is an iCalendar file being written.
type File struct{ text, stamp string }

// Begin begins a file. The stamp is the time of writing, as events of a job have
// it; maker names the program.
func Begin(maker, stamp string) *File {
	return &File{"BEGIN:VCALENDAR\nVERSION:2.0\nPRODID:-//" + escaped(maker) + "//EN\nCALSCALE:GREGORIAN\n",
		compact(stamp[:len("0000-00-00T00:00:00")])}
}

// Add adds a whole day, counted from 1970-01-01 (without an end it is one:
// section 3.6.1), and a reminder at nine in the morning of it. A later file with
// the same uid moves the day.
func (f *File) Add(uid string, day int, summary, description string) {
	summary = escaped(summary)
	f.text += "BEGIN:VEVENT\nUID:" + escaped(uid) + "\nDTSTAMP:" + f.stamp + "Z\nDTSTART;VALUE=DATE:" + compact(date.DayText(day)) +
		"\nSUMMARY:" + summary + "\nDESCRIPTION:" + escaped(description) +
		"\nTRANSP:TRANSPARENT\nBEGIN:VALARM\nACTION:DISPLAY\nTRIGGER:PT9H\nDESCRIPTION:" + summary + "\nEND:VALARM\nEND:VEVENT\n"
}

// compact is a date or time as RFC 5545 has it, without marks between.
func compact(text string) string {
	return strings.ReplaceAll(strings.ReplaceAll(text, "-", ""), ":", "")
}

// escaped is a value of type TEXT (section 3.3.11): backslash, semicolon, comma and
// line break are escaped; other control characters may not stand there.
func escaped(value string) string {
	var out []byte
	value = strings.ReplaceAll(value, "\r\n", "\n")
	for i := range len(value) {
		c := value[i]
		switch {
		case c == '\\' || c == ';' || c == ',':
			out = append(out, '\\', c)
		case c == '\n' || c == '\r':
			out = append(out, '\\', 'n')
		case c >= ' ' && c != 0x7f || c == '\t':
			out = append(out, c)
		}
	}
	return string(out)
}

// most is how long a line may be in octets, the break not counted (section 3.1).
const most = 75

// End gives the whole file, each line ended by CRLF and folded between characters.
func (f *File) End() string {
	var out []byte
	text := f.text + "END:VCALENDAR\n"
	for from, n := 0, 0; n < len(text); n++ {
		if text[n] == '\n' {
			out, from = append(out, "\r\n"...), n+1
			continue
		}
		if utf8.RuneStart(text[n]) {
			_, size := utf8.DecodeRuneInString(text[n:])
			if n-from+size > most {
				out, from = append(out, "\r\n "...), n-1
			}
		}
		out = append(out, text[n])
	}
	return string(out)
}
