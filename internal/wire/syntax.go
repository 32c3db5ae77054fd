package wire

import "unicode/utf8"

// kind is the kind of a JSON value.
type kind byte

const (
	kindObject kind = 1 + iota
	kindArray
	kindString
	kindNumber
	kindTrue
	kindFalse
	kindNull
)

// syntax reads the tokens of a JSON text: RFC 8259, in UTF-8 throughout. Half of a
// surrogate pair, which a page may have cut off, is read as U+FFFD. It stands in for
// jsontext, which costs the core 32 kB; the tests hold the two against each other.
type syntax struct {
	in string
	at int // of the next byte
}

// space passes white space over and gives the byte after it, 0 at the end.
func (s *syntax) space() byte {
	for ; s.at < len(s.in); s.at++ {
		switch c := s.in[s.at]; c {
		case ' ', '\t', '\n', '\r':
		default:
			return c
		}
	}
	return 0
}

// literal passes a word over.
func (s *syntax) literal(word string) bool {
	for i := range len(word) {
		if s.at == len(s.in) || s.in[s.at] != word[i] {
			return false
		}
		s.at++
	}
	return true
}

// digits passes digits over, one at least.
func (s *syntax) digits() bool {
	from := s.at
	for s.at < len(s.in) && s.in[s.at]-'0' < 10 {
		s.at++
	}
	return s.at > from
}

// passes passes over the next byte if it is one of two.
func (s *syntax) passes(a, b byte) bool {
	if s.at < len(s.in) && (s.in[s.at] == a || s.in[s.at] == b) {
		s.at++
		return true
	}
	return false
}

// number gives a number as it is written.
func (s *syntax) number() (string, bool) {
	from := s.at
	s.passes('-', '-')
	if !s.passes('0', '0') && !s.digits() || s.passes('.', '.') && !s.digits() {
		return "", false
	}
	if s.passes('e', 'E') {
		s.passes('+', '-')
		if !s.digits() {
			return "", false
		}
	}
	return s.in[from:s.at], true
}

// string gives what stands between two quotation marks, the first of which is
// next: a part of the text, unless something in it is escaped. When it can't be
// read, at is where it breaks.
func (s *syntax) string() (string, bool) {
	s.at++
	from := s.at
	var out []byte
	for s.at < len(s.in) {
		c := s.in[s.at]
		switch {
		case c == '"':
			text := s.in[from:s.at]
			s.at++
			if out != nil {
				text = string(append(out, text...))
			}
			return text, true
		case c == '\\':
			out = append(out, s.in[from:s.at]...)
			r, ok := s.escape()
			if !ok {
				return "", false
			}
			out = utf8.AppendRune(out, r)
			from = s.at
		case c < ' ':
			return "", false
		case c < utf8.RuneSelf:
			s.at++
		default:
			r, size := utf8.DecodeRuneInString(s.in[s.at:])
			if r == utf8.RuneError && size == 1 {
				return "", false
			}
			s.at += size
		}
	}
	return "", false
}

// escape reads what begins with a backslash. A surrogate counts with its other half
// only, and is U+FFFD without.
func (s *syntax) escape() (rune, bool) {
	s.at++
	if s.passes('u', 'u') {
		r, ok := s.hex()
		if !ok || r < 0xD800 || r > 0xDFFF {
			return r, ok
		}
		after := s.at
		if r < 0xDC00 && s.literal(`\u`) {
			if low, ok := s.hex(); ok && low >= 0xDC00 && low <= 0xDFFF {
				return 0x10000 + (r-0xD800)<<10 + low - 0xDC00, true
			}
		}
		s.at = after
		return utf8.RuneError, true
	}
	const letters, meant = `"\/bfnrt`, "\"\\/\b\f\n\r\t"
	for i := range len(letters) {
		if s.passes(letters[i], letters[i]) {
			return rune(meant[i]), true
		}
	}
	return 0, false
}

// hex reads four hexadecimal digits.
func (s *syntax) hex() (rune, bool) {
	var r rune
	for range 4 {
		if s.at == len(s.in) {
			return 0, false
		}
		c := s.in[s.at]
		switch {
		case c-'0' < 10:
			c -= '0'
		case c|0x20-'a' < 6:
			c = c | 0x20 - 'a' + 10
		default:
			return 0, false
		}
		r = r<<4 + rune(c)
		s.at++
	}
	return r, true
}

// scalar reads a value that is no object and no array, and begins with c.
func (s *syntax) scalar(c byte) (k kind, text string, ok bool) {
	switch c {
	case '"':
		text, ok = s.string()
		return kindString, text, ok
	case 't':
		return kindTrue, "", s.literal("true")
	case 'f':
		return kindFalse, "", s.literal("false")
	case 'n':
		return kindNull, "", s.literal("null")
	}
	text, ok = s.number()
	return kindNumber, text, ok
}

// skip passes an object or array over that is next, however deep it is, and reports
// whether it is one.
func (s *syntax) skip() bool {
	var ends []byte // the brackets that are to come
	for {
		c := s.space()
		if c == '{' || c == '[' {
			ends = append(ends, c+2) // as in ASCII
			s.at++
			if s.space() != c+2 {
				if !s.skipName(c + 2) {
					return false
				}
				continue
			}
		} else if _, _, ok := s.scalar(c); !ok {
			return false
		}
		for s.space() == ends[len(ends)-1] {
			s.at++
			if ends = ends[:len(ends)-1]; len(ends) == 0 {
				return true
			}
		}
		if s.space() != ',' {
			return false
		}
		s.at++
		if !s.skipName(ends[len(ends)-1]) {
			return false
		}
	}
}

// skipName passes a name and its colon over, in an object.
func (s *syntax) skipName(end byte) bool {
	if end == ']' {
		return true
	}
	if s.space() != '"' {
		return false
	}
	if _, ok := s.string(); !ok || s.space() != ':' {
		return false
	}
	s.at++
	return true
}
