package finding

import (
	"strings"
	"unicode"
)

// Cut gives so many letters of a text at most, and says by "…" after them that there
// were more. It cuts between characters: never before an accent, at a joiner or in a
// flag, as far as the characters of UAX 29 can be told without its tables; one that is
// longer than what is asked for is cut all the same. What is not UTF-8 becomes U+FFFD.
func Cut(text string, letters int) string {
	text = strings.ToValidUTF8(text, "\uFFFD")
	seen, end := 0, 0 // letters, and where the last character has ended
	var before rune
	flags := 0 // halves of flags before here, without a break
	for at, r := range text {
		if !extends(r) && before != joiner && !(isFlag(r) && flags%2 == 1) {
			end = at
		}
		if seen == letters {
			if end == 0 {
				end = at
			}
			return text[:end] + "…"
		}
		seen++
		before = r
		if flags++; !isFlag(r) {
			flags = 0
		}
	}
	return text
}

const joiner = '\u200D'

// extends reports whether a code point belongs to the character before it: a mark, a
// joiner, a colour of skin, a tag.
func extends(r rune) bool {
	return r == joiner || r >= 0x1F3FB && r <= 0x1F3FF || r >= 0xE0020 && r <= 0xE007F || unicode.Is(unicode.M, r)
}

// isFlag reports whether a code point is half of a flag.
func isFlag(r rune) bool { return r >= 0x1F1E6 && r <= 0x1F1FF }

// Clip keeps a foreign text fit for a sentence.
func Clip(text string) string { return Cut(text, 40) }
