package oil

import (
	"slices"
	"strings"

	"tidysump/internal/quantity"
)

// Label is what a text says that stands on a bottle or in a manual's table of oils.
type Label struct {
	Grades []Grade // in their order
	// Marks are those of JASO T903, also where the label has them as ISO 24254 (EMA2);
	// and what two-stroke oils are marked with.
	Marks      []string
	Service    []string // API categories; of an ILSAC mark the one that it goes with
	Conserving bool     // marked resource or energy conserving, as ILSAC marks imply
	None       bool     // it says no more than that there is none
	Other      []string // ACEA classes, which nothing here is compared with
	Unread     string   // what was not understood, as it was written
}

// What a label may say. A dash is written or left out. The categories of diesel engines
// and gears, and the marks of two-stroke oils, are the published ones: API 1509, API
// 1560, JASO M345 (FA to FD), ISO 13738 (EGB to EGD), NMMA (TC-W).
var (
	diesel    = strings.Split("CA,CB,CC,CD,CD-2,CE,CF,CF-2,CF-4,CG-4,CH-4,CI-4,CI-4+,CJ-4,CK-4,FA-4", ",")
	gears     = strings.Split("GL-1,GL-2,GL-3,GL-4,GL-5,GL-6,MT-1", ",")
	twoStroke = strings.Split("FA,FB,FC,FD,TA,TB,TC,TD,TC-W,TC-W2,TC-W3,EGB,EGC,EGD,2T", ",")
	// The category that each ILSAC mark goes with: GF-5, GF-6 and GF-7 as published, the
	// others from memory.
	ilsac = strings.Split("GF-1=SH,GF-2=SJ,GF-3=SL,GF-4=SM,GF-5=SN,GF-6=SP,GF-6A=SP,GF-6B=SP,GF-7=SQ,GF-7A=SQ,GF-7B=SQ", ",")
	// Other spellings.
	alike = strings.Split("TC-WII=TC-W2,2-STROKE=2T,TWO-STROKE=2T,2-CYCLE=2T,TWO-CYCLE=2T,CD-II=CD-2,RESOURCE-CONSERVING=RC,ENERGY-CONSERVING=RC,ENERGY-CONSERVING-II=RC,EC=RC,EC-II=RC,EC-2=RC", ",")
	// What says nothing that is compared.
	said = strings.Split("SAE,API,JASO,ILSAC,ACEA,ISO,L,NMMA,J300,J306,T903,M345,24254,13738,+,4T,4-STROKE,FOUR-STROKE,4-CYCLE,FOUR-CYCLE,"+
		"OR,AND,HIGHER,LATER,ABOVE,NEWER,BETTER,MINIMUM,MIN,AT,LEAST,CLASS,SERVICE,CATEGORY,GRADE,MOTOR,ENGINE,MOTORCYCLE,GEAR,HYPOID,OIL,FULL,FULLY,SEMI,SYNTHETIC,MINERAL", ",")
)

// ReadLabel reads what stands on a label, in whatever order and spelling: "SAE 10w40",
// "10 W 40 / 15W–50", "API SN PLUS/CF", "SP Resource Conserving", "JASO T903:2016 MA/MA2",
// "GL-4/5", "none".
func ReadLabel(text string) Label {
	text = quantity.PlainDigits(text)
	r := labelReader{text: text, list: pieces(text)}
	for r.at < len(r.list) {
		if !r.grade() && !r.word() {
			r.unread()
		}
	}
	r.None = r.None && len(r.Grades)+len(r.Marks)+len(r.Service)+len(r.Other) == 0
	return r.Label
}

// ReadGrade reads a grade as people write it: "10W-40", "10w40", "SAE 10W/40", "SAE 30".
// It reports false for what neither J300 nor J306 has, and for several.
func ReadGrade(text string) (g Grade, ok bool) {
	l := ReadLabel(text)
	if len(l.Grades) != 1 || l.Unread != "" {
		return Grade{}, false
	}
	return l.Grades[0], true
}

// ParseGrade gives the standard that a grade belongs to, and false when neither
// knows it. It takes the spellings of a card: "10W-40" or "10W40", "30", "10W".
func ParseGrade(text string) (Family, bool) {
	g, ok := ReadGrade(text)
	if full := g.String(); !ok || text != full && text != strings.Replace(full, "-", "", 1) {
		return "", false
	}
	if g.Gear() {
		return GearGrade, true
	}
	return EngineGrade, true
}

// How a piece of a label hangs on the one before it.
const (
	glued  = iota // nothing between them
	weak          // blanks, a dash, a colon: it may be one thing
	slash         // a slash alone
	strong        // it is another thing
)

// piece is a run of letters or of digits of a label, or a plus.
type piece struct {
	text     string // in capitals
	before   int
	from, to int // in the label
}

// pieces takes a label apart.
func pieces(text string) []piece {
	var list []piece
	before, last := strong, ' '
	for at, c := range text {
		gap := gapOf(c)
		kind := kindOf(c)
		switch {
		case gap != glued && before == glued:
			list[len(list)-1].to = at
			before, last = gap, ' '
		case gap != glued:
			if gap != weak || before != weak { // a slash with a blank beside it parts two things
				before = strong
			}
		case kind == last && kind != '+':
			list[len(list)-1].text += capital(c)
		default:
			if before == glued {
				list[len(list)-1].to = at
			}
			list = append(list, piece{capital(c), before, at, len(text)})
			before, last = glued, kind
		}
	}
	return list
}

// gapOf says how a sign parts what stands beside it; glued for what is no gap.
func gapOf(c rune) int {
	switch {
	case strings.ContainsRune(" \t-:._\u00a0\u00ad\u202f\u2212\ufe63\uff0d", c), c >= 0x2000 && c <= 0x2015:
		return weak
	case c == '/', c == '\\':
		return slash
	case strings.ContainsRune(",;|&()[]\"'*\n\r•·®™“”", c):
		return strong
	}
	return glued
}

// kindOf gives 0 for a digit, + for a plus and A for whatever else is no gap.
func kindOf(c rune) rune {
	switch {
	case c >= '0' && c <= '9', c == '¹', c == '²':
		return '0'
	case c == '+':
		return '+'
	}
	return 'A'
}

// capital gives a sign as pieces have it.
func capital(c rune) string {
	switch {
	case c >= 'a' && c <= 'z':
		c += 'A' - 'a'
	case c == '¹':
		c = '1'
	case c == '²':
		c = '2'
	}
	return string(c)
}

type labelReader struct {
	Label
	text string
	list []piece
	at   int // the piece that is read next
	last int // where what was not understood ends in the label; 0 after what was understood
}

// piece gives the nth piece from here; "" where it hangs on the one before it by more
// than that, or there is none.
func (r *labelReader) piece(n, most int) string {
	if r.at+n >= len(r.list) || n > 0 && r.list[r.at+n].before > most {
		return ""
	}
	return r.list[r.at+n].text
}

// ends reports whether n pieces from here end where a word does.
func (r *labelReader) ends(n int) bool {
	return r.at+n >= len(r.list) || r.list[r.at+n].before != glued || r.list[r.at+n].text == "+" || r.list[r.at+n-1].text == "+"
}

// slashed gives the word behind a slash that stands here, and how many pieces it has.
func (r *labelReader) slashed() (tail string, n int) {
	if r.at >= len(r.list) || r.list[r.at].before != slash {
		return "", 0
	}
	for tail = r.list[r.at].text; !r.ends(n + 1); {
		n++
		tail += r.list[r.at+n].text
	}
	return tail, n + 1
}

// grade reads a grade: its cold part, its hot part or both.
func (r *labelReader) grade() bool {
	if r.piece(1, weak) != "W" {
		part := r.last > 0 && r.list[r.at].before < strong // of what was not understood
		return !part && r.took(1, "", r.piece(0, weak))
	}
	winter, summer := r.piece(0, weak)+"W", r.piece(2, slash)
	if summer == "" || kindOf(rune(summer[0])) != '0' || r.piece(3, weak) == "W" || !r.ends(3) {
		return r.took(2, winter, "") // what follows is another grade, or none
	}
	return r.took(3, winter, summer)
}

// took adds a grade of n pieces. In "10W-30/40" the cold part counts for both.
func (r *labelReader) took(n int, winter, summer string) bool {
	g, ok := gradeOfParts(winter, summer)
	if !ok || !r.ends(n) {
		return false
	}
	r.Grades = append(r.Grades, g)
	r.step(n)
	if tail, size := r.slashed(); size == 1 && winter != "" && r.piece(1, weak) != "W" {
		r.took(1, winter, tail)
	}
	return true
}

// step goes on behind n pieces that were understood.
func (r *labelReader) step(n int) { r.at, r.last = r.at+n, 0 }

// mostPieces is how many pieces the longest word of a label has: ENERGY CONSERVING II
// behind the name of a standard.
const mostPieces = 4

// word reads a word of the tables, the longest that stands here, and what slashes add to
// it: the 5 of "GL-4/5", the B of "GF-6A/B".
func (r *labelReader) word() bool {
	for n := mostPieces; n > 0; n-- {
		key, ok := r.key(n)
		if !ok || !r.add(key) {
			continue
		}
		r.step(n)
		for tail, size := r.slashed(); size > 0; tail, size = r.slashed() {
			cut := len(key)
			for cut > 1 && (wordOf(tail) != "" || !r.add(key[:cut]+tail)) {
				cut--
			}
			if cut <= 1 {
				break
			}
			r.step(size)
		}
		return true
	}
	return false
}

// key joins n pieces from here to what may be one word.
func (r *labelReader) key(n int) (key string, ok bool) {
	for i := range n {
		text := r.piece(i, weak)
		if text == "" {
			return "", false
		}
		if text == "PLUS" {
			text = "+"
		}
		key += text
	}
	for _, name := range [...]string{"JASO", "API"} {
		if rest := strings.TrimPrefix(key, name); rest != "" {
			key = rest
		}
	}
	return key, r.ends(n) || among(said, key) != ""
}

// add takes in what a word says; it reports false for what is none.
func (r *labelReader) add(key string) bool {
	word := wordOf(key)
	switch {
	case word == "":
		return false
	case slices.Contains(Marks, word) || slices.Contains(twoStroke, word):
		r.Marks = with(r.Marks, word)
	case slices.Contains(petrol, word) || slices.Contains(diesel, word) || slices.Contains(gears, word):
		r.Service = with(r.Service, word)
	case word == "RC":
		r.Conserving = true
	case word == None:
		r.None = true
	case strings.HasPrefix(word, "GF-"):
		_, category, _ := strings.Cut(word, "=")
		r.Service, r.Conserving = with(r.Service, category), true
	case word[0] > '9' && acea(word):
		if len(word) > 3 {
			word = word[:len(word)-2] // without its year
		}
		r.Other = with(r.Other, word)
	}
	return true
}

// unread notes what is not understood, up to where a word ends.
func (r *labelReader) unread() {
	n := 1
	for !r.ends(n) {
		n++
	}
	from, to := r.list[r.at].from, r.list[r.at+n-1].to
	switch {
	case r.last > 0:
		r.Unread += r.text[r.last:to]
	case r.Unread != "":
		r.Unread += ", " + r.text[from:to]
	default:
		r.Unread = r.text[from:to]
	}
	r.at, r.last = r.at+n, to
}

// wordOf gives a word of the tables by its letters and digits; of an ILSAC mark with its
// category. "" is none.
func wordOf(key string) string {
	for _, line := range alike {
		if other, word, _ := strings.Cut(line, "="); strings.ReplaceAll(other, "-", "") == key {
			return word
		}
	}
	for _, line := range ilsac {
		if mark, _, _ := strings.Cut(line, "="); strings.ReplaceAll(mark, "-", "") == key {
			return line
		}
	}
	if iso := strings.TrimPrefix(key, "E"); slices.Contains(Marks, iso) {
		return iso
	}
	for _, list := range [...][]string{twoStroke, petrol, diesel, gears, said, {"RC", None}} {
		if word := among(list, key); word != "" {
			return word
		}
	}
	if acea(key) {
		return key
	}
	return ""
}

// acea reports whether a word has the form of an ACEA class, A3 or C3-12, or of the year
// of an edition.
func acea(key string) bool {
	digits := strings.TrimLeft(key, "ABCE")
	if len(key)-len(digits) > 1 || len(digits) == 0 || len(digits) > 4 || len(digits) == len(key) && len(digits) < 4 {
		return false
	}
	return strings.Trim(digits, "0123456789") == ""
}

// among gives the word of a list that has those letters and digits.
func among(list []string, key string) string {
	for _, word := range list {
		if strings.ReplaceAll(word, "-", "") == key {
			return word
		}
	}
	return ""
}

// with is a list with a word that stands in it once.
func with(list []string, word string) []string {
	if slices.Contains(list, word) {
		return list
	}
	return append(list, word)
}
