package quantity

import (
	"strings"
	"unicode/utf8"
)

// signs are the plain signs, each with those that phones, keyboards and packagings
// have instead of it.
var signs = [...]string{
	" \t\n\r\u00a0\u2000\u2001\u2002\u2003\u2004\u2005\u2006\u2007\u2008\u2009\u200a\u202f\u205f\u3000",
	"-−‐‑‒–—―﹣",
	"~∼〜",
	"'’‘ʼ′´`٬",
	"\"”“″",
	".٫",
	"/⁄∕",
	"·•∙⋅‧・",
	"°º˚",
}

// spelledOut are signs that stand for several.
var spelledOut = [...][2]string{{"½", " 1/2"}, {"¼", " 1/4"}, {"¾", " 3/4"}, {"⅓", " 1/3"}, {"⅔", " 2/3"},
	{"⅛", " 1/8"}, {"⅜", " 3/8"}, {"⅝", " 5/8"}, {"⅞", " 7/8"}, {"℃", "°C"}, {"℉", "°F"}, {"…", "..."},
	{"+/-", "±"}, {"+-", "±"}}

// Typed brings the blanks, dashes, dots, digits and fractions that phones and
// packagings have to plain ones, and takes out what isn't seen.
func Typed(text string) string {
	text = strings.Map(plainSign, text)
	for i := range spelledOut {
		text = strings.ReplaceAll(text, spelledOut[i][0], spelledOut[i][1])
	}
	for strings.Contains(text, "  ") {
		text = strings.ReplaceAll(text, "  ", " ")
	}
	return strings.TrimSpace(text)
}

func plainSign(r rune) rune {
	switch {
	case r >= 0xff01 && r <= 0xff5e: // of full width
		return r - 0xff01 + '!'
	case r >= 0x660 && r <= 0x669: // Arabic digits
		return r - 0x660 + '0'
	case r >= 0x6f0 && r <= 0x6f9: // Persian ones
		return r - 0x6f0 + '0'
	case r == 0xad || r >= 0x200b && r <= 0x200f || r >= 0x202a && r <= 0x202e || r >= 0x2060 && r <= 0x2069 || r == 0xfeff:
		return -1 // joins, soft hyphens, marks of direction
	}
	if r < ' ' || r > '~' {
		for _, group := range signs {
			if strings.ContainsRune(group, r) {
				plain, _ := utf8.DecodeRuneInString(group)
				return plain
			}
		}
	}
	return r
}
