package manual

import (
	"strconv"
	"strings"

	"tidysump/internal/bolt"
	"tidysump/internal/oil"
)

// findShapes takes what looks like amounts and is none: grades, marks, categories,
// threads, references, part numbers, dates.
func (p *page) findShapes() {
	figures := 0
	for i := range p.tokens {
		if p.tokens[i].kind == number {
			figures++
		}
	}
	p.facts = make([]fact, 0, figures)
	for i := 0; i < len(p.places); {
		if p.places[i].taken {
			i++
			continue
		}
		n := p.gradeAt(i)
		if n == 0 {
			n = p.markAt(i)
		}
		if n == 0 {
			n = p.threadAt(i)
		}
		if n == 0 {
			n = p.referenceAt(i)
		}
		p.take(i, i+n)
		i += max(n, 1)
	}
}

func (p *page) at(i int) *place {
	if i < 0 || i >= len(p.places) {
		return &nowhere
	}
	return &p.places[i]
}

var nowhere = place{token: &token{lexeme: &lexeme{word: -1}}, term: -1}

// gradeAt reads a grade: "SAE 10W-40", "10W40", "SAE 30". It gives how many tokens it
// takes; a grade that repeats the cold part of the last ("10W-30/40") is two.
func (p *page) gradeAt(i int) int {
	n := 0
	sae := p.at(i).fold == "sae" || p.at(i).fold == "ep" && strings.Contains("|75|80|85|90|140|250|", "|"+p.at(i+1).text+"|") // "EP 90": SAE J306 has these
	dotted := 0
	if p.at(i).fold == "s" && p.at(i+1).text == "." && p.at(i+2).fold == "a" && p.at(i+3).text == "." && p.at(i+4).fold == "e" { // "S.A.E. 40"
		sae, dotted = true, 4
	}
	if sae {
		n = 1 + dotted
		if dotted > 0 && p.at(i+n).text == "." {
			n++
		}
		if p.at(i+n).text == ":" || p.at(i+n).text == "-" {
			n++
		}
	}
	first := p.at(i + n)
	if first.kind != number || len(first.text) > 3 || p.barred(i+n) || !sae && i > 0 && first.gap == glued && p.at(i-1).kind == word {
		return 0
	}
	w := p.at(i + n + 1)
	if w.kind == word && w.fold == "w" && w.gap != wide {
		text := first.text + "W"
		k := n + 2
		if s := p.at(i + k); (s.text == "-" || s.text == "/") && s.gap != wide {
			k++
		}
		if hot := p.at(i + k); hot.kind == number && hot.gap != wide && (k > n+2 || hot.gap == glued || sae || len(hot.text) == 2 && p.unitBehind(i+k+1) == "") {
			if p.grade(i, i+k+1, text+"-"+hot.text) {
				return k + 1
			}
		}
		if sae && !(k > n+2 && p.at(i+k).gap == glued) && p.grade(i, i+n+2, text) { // "SAE 20W-", and what nobody can read
			return n + 2
		}
		return 0
	}
	if k := i + n + 2; sae && p.bareGrade(i+n) && p.grade(i, k+1, first.text+"W-"+p.at(k).text) {
		return n + 3
	}
	if sae && p.grade(i, i+n+1, first.text) {
		return n + 1
	}
	return 0
}

// bareGrade reports whether a grade of two numbers is written without its W, as handbooks did
// before it was usual: "SAE 20/50". Two thick or two near ones are two grades: "SAE 30/40".
func (p *page) bareGrade(i int) bool {
	stroke, hot := p.at(i+1), p.at(i+2)
	if stroke.text != "/" && stroke.text != "-" || stroke.gap != glued || hot.kind != number || hot.gap != glued {
		return false
	}
	cold := p.places[i].text
	if strings.Contains("|75|80|85|", "|"+cold+"|") {
		return hot.text == "90" || hot.text == "140"
	}
	return strings.Contains("|0|5|10|15|20|", "|"+cold+"|") && strings.Contains("|30|40|50|60|", "|"+hot.text+"|") && cold+hot.text != "2030"
}

// unitBehind gives the unit that stands at a token, "" for none.
func (p *page) unitBehind(i int) string {
	id, _ := p.unitFrom(i)
	return id
}

func (p *page) grade(from, to int, text string) bool {
	g, ok := oil.ReadGrade(text)
	if ok {
		p.facts = append(p.facts, fact{kind: "grade", text: g.String(), from: from, to: to})
	}
	return ok
}

// besideCategory are the words that may stand between a standard's name and its category.
const besideCategory = "|t|service|api|class|type|standard|category|classification|rating|quality|grade|klasse|klassifikation|classe|clase|categoria|categorie|kategorie|norm|norme|norma|classificazione|classificacao|clasificacion|"

// markAt reads JASO marks and API categories with the name of their standard, and lists
// of them.
func (p *page) markAt(i int) int {
	name := p.at(i).fold
	kind := ""
	switch {
	case name == "jaso":
		kind = "mark"
	case name == "api":
		kind = "service"
	case name == "gl" && p.at(i).text == "GL":
		kind = "service"
	case name == "ma" && p.at(i).text == "MA" && i > 1 && (p.at(i-1).text == "," || p.at(i-1).text == "/") && len(p.facts) > 0 && p.facts[len(p.facts)-1].to == i-1 && ofOil(&p.facts[len(p.facts)-1]):
		kind = "mark" // "SAE 10W-40, API SL, MA2"
	case strings.Contains(ofQuality, "|"+name+"|") && p.bareCategory(i):
		kind = "service" // "SAE 15W/40, quality grade SF or above"
	default:
		return 0
	}
	n := 1
	if name == "gl" || name == "ma" {
		n = 0
	}
	end := 0
	for n < 16 {
		t := p.at(i + n)
		spelt, size := p.spoiltCategory(i+n, kind)
		switch {
		case t.kind == word && (strings.Contains(besideCategory, "|"+t.fold+"|")), t.kind == number && t.gap == glued && p.at(i+n-1).fold == "t", t.kind == number && t.text == "903":
			n++
			continue
		case t.kind == sign && strings.Contains(":/,-;", t.text), end > 0 && (p.senseAt(i+n, "join.or") || p.senseAt(i+n, "join.and")):
			n++
			continue
		case size > 0 || t.kind == word && t.upper:
			text := spelt
			if size > 0 {
				p.places[i+n].repaired = true
			} else {
				text, size = p.category(i + n)
			}
			l := oil.ReadLabel(text)
			switch {
			case kind == "mark" && len(l.Marks) == 1 && l.Unread == "":
				p.facts = append(p.facts, fact{kind: kind, text: l.Marks[0], from: start(i, i+n, end), to: i + n + size})
				end = n + size
				n = end
				continue
			case kind == "service" && len(l.Service) == 1 && l.Unread == "":
				p.facts = append(p.facts, fact{kind: kind, text: l.Service[0], from: start(i, i+n, end), to: i + n + size})
				end = n + size
				n = end
				continue
			}
		}
		break
	}
	return end
}

// ofQuality are the words behind which a category may stand without its standard's name.
const ofQuality = "|quality|grade|classification|class|category|service|klasse|qualitat|qualitatsklasse|kategorie|klassifikation|classe|categorie|qualite|calidad|clase|categoria|clasificacion|qualita|classificazione|qualidade|classificacao|kwaliteit|"

// bareCategory reports whether an engine oil's category of two letters stands behind a word for
// quality, in a sentence that has given the oil's grade: API counts them from SA on.
func (p *page) bareCategory(i int) bool {
	t, n := p.at(i+1), len(p.facts)
	if t.kind != word || !t.upper || len(t.text) != 2 || t.text[0] != 'S' || t.gap != blank || n == 0 {
		return false
	}
	f := &p.facts[n-1]
	return ofOil(f) && i-f.to < mostBetween && p.places[f.from].sentence == p.places[i].sentence && t.term < 0
}

// category gives the text of a mark or a category at a word, with the figure behind it.
func (p *page) category(i int) (text string, size int) {
	t, next := p.at(i), p.at(i+1)
	switch {
	case next.kind == number && next.gap == glued:
		return t.text + next.text, 2
	case t.fold == "gl" && next.text == "-" && p.at(i+2).kind == number:
		return t.text + "-" + p.at(i+2).text, 3
	case t.fold == "gl" && next.kind == number && next.gap == blank:
		return t.text + "-" + next.text, 2
	}
	return t.text, 1
}

// spoiltCategory puts right what a photo has made of a mark or a category, where the page is
// spoilt: "5G", "GL-S", "MAZ"; size is 0 for all else.
func (p *page) spoiltCategory(i int, kind string) (text string, size int) {
	if !p.spoilt {
		return "", 0
	}
	t, next := p.at(i), p.at(i+1)
	switch {
	case kind == "service" && t.text == "5" && next.kind == word && next.gap == glued && len(next.text) == 1 && next.upper:
		return "S" + next.text, 2
	case kind == "service" && t.text == "GL" && next.text == "-" && p.at(i+2).text == "S":
		return "GL-5", 3
	case kind == "mark" && t.text == "MAZ":
		return "MA2", 1
	}
	return "", 0
}

// start is where the first of a list begins: with its standard's name.
func start(name, at, end int) int {
	if end == 0 {
		return name
	}
	return at
}

// threadAt reads a metric thread: "M12 x 1.5", "M 6".
func (p *page) threadAt(i int) int {
	t := p.at(i)
	if n := p.spoiltThread(i); n > 0 {
		return n
	}
	if n := p.inchThreadAt(i); n > 0 {
		return n
	}
	if t.text != "M" || p.at(i+1).kind != number || p.at(i+1).gap == wide || t.gap == glued && i > 0 && p.at(i-1).kind != sign {
		return 0
	}
	text, n := "M"+p.at(i+1).text, 2
	if x := p.at(i + 2); (x.fold == "x" || x.text == "×" || x.text == "*") && p.at(i+3).kind == number && x.gap != wide {
		text, n = text+"x"+strings.Replace(p.at(i+3).text, ",", ".", 1), 4
		if m, rest := p.at(i+4), p.at(i+5); (m.text == "," || m.text == ".") && rest.kind == number && rest.gap == glued && m.gap != wide && len(rest.text) <= 2 && len(p.at(i+3).text) == 1 {
			text, n = text+"."+rest.text, 6 // a photo's "1 ,5"
			p.places[i+4].repaired = p.places[i+4].repaired || m.gap != glued
		}
	}
	if x := p.at(i + 2); n == 2 && (x.fold == "xl" || x.fold == "xi") && x.gap != wide { // a photo's "xl,5"
		text, n = text+"x1", 3
		if m, rest := p.at(i+3), p.at(i+4); (m.text == "," || m.text == ".") && rest.kind == number && m.gap == glued && rest.gap == glued && len(rest.text) <= 2 {
			text, n = text+"."+rest.text, 5
		}
		p.places[i+2].repaired = true
	}
	if _, ok := bolt.ParseThread(text); !ok {
		long, err := strconv.Atoi(p.at(i + 3).text)
		if text = "M" + p.at(i+1).text; n != 4 || err != nil || long < leastScrew {
			return 0
		}
		if _, ok := bolt.ParseThread(text); !ok {
			return 0
		}
		p.facts = append(p.facts, fact{kind: "thread", text: text, from: i, to: i + 2}) // "M6 x 20": its length
		return n
	}
	if d, err := strconv.Atoi(p.at(i + 1).text); n == 4 && err == nil && d < leastCoarse && len(p.at(i+3).text) == 1 && p.at(i+3).text > "1" {
		p.facts = append(p.facts, fact{kind: "thread", text: "M" + p.at(i+1).text, from: i, to: i + 2}, // "M6 x 2": two screws
			fact{kind: "count", text: p.at(i + 3).text, from: i + 3, to: i + 4})
		return n
	}
	p.facts = append(p.facts, fact{kind: "thread", text: text, from: i, to: i + n})
	return n
}

// inchThreadAt reads a unified thread, "3/4-16 UNF", and takes a pipe's for no number: "G 1/4",
// "1/8 BSP".
func (p *page) inchThreadAt(i int) int {
	n := 0
	pipe := p.at(i).kind == word && strings.Contains("|G|R|PT|Rc|Rp|", "|"+p.at(i).text+"|") && p.at(i+1).gap != wide
	if pipe {
		n = 1
	}
	if _, _, end, ok := p.fractionAt(i + n); ok {
		n = end - i
	} else if pipe || p.at(i).kind != number || len(p.at(i).text) != 1 {
		return 0
	} else {
		n = 1 // "1-12 UNF"
	}
	if pipe {
		return n
	}
	name := p.at(i + n)
	if name.kind == word && name.gap != wide && (strings.HasPrefix(name.fold, "bsp") || strings.HasPrefix(name.fold, "npt")) {
		return n + 1
	}
	if pitch := p.at(i + n + 1); name.text != "-" && name.fold != "x" || name.gap == wide || pitch.kind != number || len(pitch.text) != 2 || pitch.gap == wide {
		return 0
	}
	if series := p.at(i + n + 2); series.kind != word || !strings.HasPrefix(series.fold, "un") || len(series.text) > 4 || series.gap == wide {
		return 0
	}
	text := p.places[i].text
	for _, t := range p.places[i+1 : i+n] {
		text += t.text
	}
	text += "-" + p.at(i+n+1).text + " " + strings.ToUpper(p.at(i+n+2).text)
	if _, ok := bolt.ParseThread(text); !ok {
		return 0
	}
	p.facts = append(p.facts, fact{kind: "thread", text: text, from: i, to: i + n + 3})
	return n + 3
}

// leastScrew is the length in millimetres of the shortest screw of a cover: from memory.
const leastScrew = 8

// leastCoarse is the least thread that has a pitch of two millimetres (ISO 261).
const leastCoarse = 14

// referenceAt takes numbers that are none: pages, figures, part numbers, dates.
func (p *page) referenceAt(i int) int {
	t := p.at(i)
	if t.kind == word {
		if term := p.termAt(i); term != nil && term.from == i && (term.has("label.figure") || term.has("label.page")) && !term.has("number.1") {
			n := term.to - i
			if p.at(i+n).text == "." && p.at(i+n).gap == glued {
				n++
			}
			if f := p.at(i + n); f.kind == number && f.gap != wide {
				k := n + 1
				for (p.at(i+k).text == "-" || p.at(i+k).text == ".") && p.at(i+k).gap == glued && p.at(i+k+1).kind == number && p.at(i+k+1).gap == glued {
					k += 2
				}
				if u, _ := p.unitFrom(i + k); u == "" {
					return k
				}
			}
		}
		return 0
	}
	if t.kind != number || i > 0 && t.gap == glued {
		return 0
	}
	// Digits with two hyphens or more between them: a part number or a date.
	n, hyphens := 1, 0
	for p.at(i+n).gap == glued && p.at(i+n).text == "-" && p.at(i+n+1).gap == glued && p.at(i+n+1).kind != sign {
		n += 2
		hyphens++
	}
	if hyphens >= 2 {
		return n
	}
	return 0
}

// spoiltThread reads a thread of a photo in which letters stand for its digits: "Ml4".
func (p *page) spoiltThread(i int) int {
	if !p.spoilt || p.at(i).kind != word || p.at(i).text[0] != 'M' || i > 0 && p.at(i).gap == glued {
		return 0
	}
	text, n := p.at(i).text[1:], 1
	for ; n < 4 && p.at(i+n).gap == glued && p.at(i+n).kind != sign && i+n < len(p.places); n++ {
		text += p.at(i + n).text
	}
	digits, changed, kept := figures(text)
	if changed == 0 || kept == 0 || strings.ContainsAny(digits, ".,") {
		return 0
	}
	if _, ok := bolt.ParseThread("M" + digits); !ok {
		return 0
	}
	p.places[i].repaired = true
	p.facts = append(p.facts, fact{kind: "thread", text: "M" + digits, from: i, to: i + n})
	return n
}
