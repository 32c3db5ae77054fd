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

// syntax reads the tokens of a JSON text: RFC 8259 with what RFC 7493 (I-JSON)
// asks on top, UTF-8 throughout and no name twice in an object. It stands in for
// jsontext, which costs the core 32 kB; the tests hold the two against each
// other.
type syntax struct {
	in []byte
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
	return string(s.in[from:s.at]), true
}

// string gives what stands between two quotation marks, the first of which is
// next. When it can't be read, at is where it breaks.
func (s *syntax) string() (string, bool) {
	s.at++
	from := s.at
	var out []byte
	for s.at < len(s.in) {
		c := s.in[s.at]
		switch {
		case c == '"':
			out = append(out, s.in[from:s.at]...)
			s.at++
			return string(out), true
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
			r, size := utf8.DecodeRune(s.in[s.at:])
			if r == utf8.RuneError && size == 1 {
				return "", false
			}
			s.at += size
		}
	}
	return "", false
}

// escape reads what begins with a backslash. A surrogate counts with its other
// half only.
func (s *syntax) escape() (rune, bool) {
	s.at++
	if s.passes('u', 'u') {
		r, ok := s.hex()
		if !ok || r < 0xD800 || r > 0xDFFF {
			return r, ok
		}
		if r > 0xDBFF || !s.literal(`\u`) {
			return 0, false
		}
		low, ok := s.hex()
		return 0x10000 + (r-0xD800)<<10 + low - 0xDC00, ok && low >= 0xDC00 && low <= 0xDFFF
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
