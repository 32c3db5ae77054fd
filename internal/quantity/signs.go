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
	"'’‘ʼ′´`",
	"\"”“″",
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
	if !plain(text) {
		text = strings.Map(plainSign, PlainDigits(text))
		for i := range spelledOut {
			text = strings.ReplaceAll(text, spelledOut[i][0], spelledOut[i][1])
		}
	}
	for strings.Contains(text, "  ") {
		text = strings.ReplaceAll(text, "  ", " ")
	}
	return strings.TrimSpace(text)
}

// plain reports whether a text has no sign that may stand for another.
func plain(text string) bool {
	for i := 0; i < len(text); i++ {
		if c := text[i]; c < ' ' || c > '~' || c == '+' {
			return false
		}
	}
	return true
}

// PlainDigits brings the digits of all scripts, the marks that stand in their numbers and what
// is of full width to ASCII, and takes out what isn't seen. All else stays as it was typed.
func PlainDigits(text string) string { return strings.Map(plainDigit, text) }

// noughts are those of all scripts. Wherever one has digits, they are ten in a row that
// begins with its nought (The Unicode Standard, 4.6).
const noughts = "\u0660\u06f0\u07c0\u0966\u09e6\u0a66\u0ae6\u0b66\u0be6\u0c66\u0ce6\u0d66" +
	"\u0de6\u0e50\u0ed0\u0f20\u1040\u1090\u17e0\u1810\u1946\u19d0\u1a80\u1a90" +
	"\u1b50\u1bb0\u1c40\u1c50\ua620\ua8d0\ua900\ua9d0\ua9f0\uaa50\uabf0\uff10" +
	"\U000104a0\U00010d30\U00011066\U000110f0\U00011136\U000111d0\U000112f0\U00011450\U000114d0\U00011650\U000116c0\U00011730" +
	"\U000118e0\U00011950\U00011c50\U00011d50\U00011da0\U00011f50\U00016a60\U00016ac0\U00016b50\U0001d7ce\U0001d7d8\U0001d7e2" +
	"\U0001d7ec\U0001d7f6\U0001e140\U0001e2f0\U0001e4f0\U0001e950\U0001fbf0"

func plainDigit(r rune) rune {
	switch {
	case r < utf8.RuneSelf:
		return r
	case r >= 0xff01 && r <= 0xff5e: // of full width
		return r - 0xff01 + '!'
	case r == 0xad || r == 0x61c || r >= 0x200b && r <= 0x200f || r >= 0x202a && r <= 0x202e || r >= 0x2060 && r <= 0x2069 || r == 0xfeff:
		return -1 // joins, soft hyphens, marks of direction
	}
	switch r {
	case '٫', '﹒', '。', '｡':
		return '.'
	case '،', '﹐', '、', '､':
		return ','
	case '٬':
		return '\''
	case '٪', '﹪':
		return '%'
	}
	for _, nought := range noughts {
		if r >= nought && r < nought+10 {
			return '0' + r - nought
		}
	}
	return r
}

func plainSign(r rune) rune {
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

// PlainSigns brings the signs, blanks and digits of a text to plain ones, each to one; what is
// not seen goes.
func PlainSigns(text string) string { return strings.Map(plainSign, PlainDigits(text)) }
