// Package manual reads the text of a manual's page, as somebody pastes it: which figures
// of an oil change stand there, in which words, and what is doubtful about them.
//
// It finds a figure's shape first (a thread, a grade, an amount with its unit), then what
// the page says around it, and takes what it is from the nearest words that fit. What
// only words of another job stand beside is left alone. It proposes and never decides:
// what it is not sure of, it says with the reason.
//
// The words of the trade are data (specs/terms), one file a language.
package manual

import (
	"strings"
	"unicode"
	"unicode/utf8"

	"tidysump/internal/quantity"
)

// letter is one sign of a text in its plain form, with the bytes it came from.
type letter struct {
	r        rune
	from, to int32
}

// spelled are signs that stand for several.
var spelled = [...][2]string{{"½", " 1/2"}, {"¼", " 1/4"}, {"¾", " 3/4"}, {"⅓", " 1/3"}, {"⅔", " 2/3"},
	{"⅛", " 1/8"}, {"⅜", " 3/8"}, {"⅝", " 5/8"}, {"⅞", " 7/8"}, {"℃", "°C"}, {"℉", "°F"}, {"…", "..."},
	{"ﬁ", "fi"}, {"ﬂ", "fl"}, {"ﬀ", "ff"}, {"ﬃ", "ffi"}, {"ﬄ", "ffl"}, {"ﬅ", "ft"}, {"㎜", "mm"}, {"㎝", "cm"},
	{"㎞", "km"}, {"㎖", "mL"}, {"ℓ", "L"}, {"㏄", "cc"}, {"№", "No"}}

// lineOf brings a line of a text to plain signs, and gives where the next one begins.
func lineOf(list []letter, text string, at int) (line []letter, next int) {
	for at < len(text) {
		if c := text[at]; c < utf8.RuneSelf {
			at++
			switch c {
			case '\r':
				if at < len(text) && text[at] == '\n' {
					continue
				}
				return list, at
			case '\n':
				return list, at
			case '\f', '\v': // a page's end, as good as a blank line
				if len(list) > 0 {
					at--
				}
				return list, at
			}
			list = append(list, letter{rune(c), int32(at - 1), int32(at)})
			continue
		}
		r, size := utf8.DecodeRuneInString(text[at:])
		from := at
		at += size
		if r >= 'À' && r <= 'ſ' && r != '×' && r != '÷' { // letters, plain as they are
			list = append(list, letter{r, int32(from), int32(at)})
			continue
		}
		n := len(list)
		list = plainLetters(list, text[from:at], int32(from), int32(at))
		if len(list) > n && list[len(list)-1].r == '\n' {
			return list[:len(list)-1], at
		}
	}
	return list, at
}

func plainLetters(list []letter, sign string, from, to int32) []letter {
	for i := range spelled {
		if spelled[i][0] == sign {
			for _, r := range spelled[i][1] {
				if r == ' ' && (len(list) == 0 || !isDigit(list[len(list)-1].r)) {
					continue
				}
				list = append(list, letter{r, from, to})
			}
			return list
		}
	}
	for _, r := range quantity.PlainSigns(sign) {
		switch r {
		case '\u2028', '\u2029', '\u0085', '\v', '\f':
			r = '\n'
		}
		list = append(list, letter{r, from, to})
	}
	return list
}

func isDigit(r rune) bool { return r >= '0' && r <= '9' }

func isLetter(r rune) bool {
	return r >= 'a' && r <= 'z' || r >= 'A' && r <= 'Z' || r > utf8.RuneSelf && (unicode.IsLetter(r) || unicode.IsMark(r))
}

// bases are the letters with accents of the languages of Latin script, behind the letter
// that they are read as.
var bases = [...]string{"aàáâãäåāăą", "cçćĉċč", "dďđ", "eèéêëēĕėęě", "gĝğġģ", "hĥħ", "iìíîïĩīĭįı", "jĵ", "kķ",
	"lĺļľŀł", "nñńņňŉ", "oòóôõöøōŏő", "rŕŗř", "sśŝşšș", "tţťŧț", "uùúûüũūŭůűų", "wŵ", "yýÿŷ", "zźżž"}

// fold gives a word as terms are compared: small, without accents.
func fold(word string) string {
	plain := true
	for i := 0; i < len(word); i++ {
		if c := word[i]; c >= utf8.RuneSelf || c >= 'A' && c <= 'Z' {
			plain = false
			break
		}
	}
	if plain {
		return word
	}
	var b strings.Builder
	for _, r := range word {
		r = unicode.ToLower(r)
		switch {
		case r < utf8.RuneSelf:
			b.WriteByte(byte(r))
		case r == 'ß':
			b.WriteString("ss")
		case r == 'æ':
			b.WriteString("ae")
		case r == 'œ':
			b.WriteString("oe")
		case unicode.IsMark(r):
		default:
			b.WriteRune(baseOf(r))
		}
	}
	return b.String()
}

func baseOf(r rune) rune {
	for _, group := range bases {
		if strings.ContainsRune(group, r) {
			return rune(group[0])
		}
	}
	return r
}
