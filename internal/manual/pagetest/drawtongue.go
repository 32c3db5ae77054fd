package pagetest

import (
	"strconv"
	"strings"

	"pgregory.net/rapid"
)

// DrawTongue makes a page of a language other than English out of one truth: tables with
// their columns in their places or not, rows with leaders, or sentences.
func DrawTongue(t *rapid.T) *Page {
	l := &tongues[rapid.IntRange(0, len(tongues)-1).Draw(t, "tongue")]
	p := &Page{Name: "drawn", Kind: Clean, Language: l.tag}
	d := drawing{T: t, tongue: l, page: p}
	d.print()
	if rapid.Bool().Draw(t, "prose") {
		p.Text = d.sentences()
	} else {
		p.Text = strings.Join(rapid.Permutation([]string{d.torqueTable(), d.volumeTable()}).Draw(t, "order"), "\n\n") + "\n\n" + d.small(2)
	}
	return p
}

// drawing is one page that is drawn: all of it is printed alike.
type drawing struct {
	*rapid.T
	*tongue
	page          *Page
	unit          [3]string // of torques, of their twins, of volumes
	group, leader string
	twin, cubic   bool
	oil           int // tenths of a litre without the filter
	distance      int
}

func (d *drawing) pick(label string, from ...string) string {
	return rapid.SampledFrom(from).Draw(d.T, label)
}

func (d *drawing) flip(label string) bool { return rapid.Bool().Draw(d.T, label) }

func (d *drawing) number(label string, low, high int) int {
	return rapid.IntRange(low, high).Draw(d.T, label)
}

func (d *drawing) print() {
	d.unit = [3]string{d.pick("N·m", d.nm...), d.pick("kgf·m", d.kgm...), d.pick("litre", d.litre...)}
	d.group, d.leader = d.pick("group", d.groups...), d.pick("leader", "dots", "colon", "tab", "blanks", "collapsed")
	d.twin, d.cubic = d.flip("twin"), d.flip("cubic")
	d.oil, d.distance = d.number("oil", 8, 35), d.number("distance", 4, 24)*500
}

// grouped prints a whole number as its thousands are parted.
func (d *drawing) grouped(n int) string {
	text := strconv.Itoa(n)
	if n >= 1000 {
		text = text[:len(text)-3] + d.group + text[len(text)-3:]
	}
	return text
}

// tenths prints a number of tenths.
func (d *drawing) tenths(n int) string { return strconv.Itoa(n/10) + d.point + strconv.Itoa(n%10) }

// figure draws a figure of a thing: as it is printed, and as it is answered.
func (d *drawing) figure(what string) (printed, value string) {
	switch what {
	case "oil.engine.oil-only":
		return d.litres(d.oil)
	case "oil.engine.with-filter":
		return d.litres(d.oil + 2)
	case "oil.engine.dry":
		return d.litres(d.oil + 6)
	case "oil.gearbox.volume", "oil.primary.volume":
		return d.litres(d.number(what, 5, 12))
	case "oil.final.volume":
		return d.litres(d.number(what, 1, 4))
	case "level.band":
		return d.litres(d.number(what, 3, 9))
	case "interval.distance":
		return d.grouped(d.distance) + " km", strconv.Itoa(d.distance) + " km"
	case "interval.severe":
		return d.grouped(d.distance/2) + " km", strconv.Itoa(d.distance/2) + " km"
	case "interval.first":
		n := rapid.SampledFrom([]int{300, 500, 800, 1000}).Draw(d.T, what)
		return d.grouped(n) + " km", strconv.Itoa(n) + " km"
	case "interval.months":
		n := d.pick(what, "6", "12", "18")
		return n + " " + map[string]string{"de": "Monaten", "fr": "mois", "es": "meses", "it": "mesi", "pt": "meses", "nl": "maanden"}[d.tag], n + " months"
	case "level.wait", "level.run":
		n := strconv.Itoa(d.number(what, 2, 9))
		return n + " " + map[string]string{"de": "Minuten", "fr": "minutes", "es": "minutos", "it": "minuti", "pt": "minutos", "nl": "minuten"}[d.tag], n + " min"
	}
	n := 0
	for i := range torques {
		if torques[i].what == what {
			n = d.number(what, torques[i].low, torques[i].high)
		}
	}
	printed = strconv.Itoa(n) + " " + d.unit[0]
	if d.twin {
		printed += " (" + d.tenths(n) + " " + d.unit[1] + ")"
	}
	return printed, strconv.Itoa(n) + " N·m"
}

func (d *drawing) litres(n int) (printed, value string) {
	if d.cubic {
		return d.grouped(n*100) + " cm³", strconv.Itoa(n*100) + " mL"
	}
	return d.tenths(n) + " " + d.unit[2], strconv.FormatFloat(float64(n)/10, 'f', 1, 64) + " L"
}

// sentences are some of the language's, each of another thing, with all that they say.
func (d *drawing) sentences() string {
	var list []string
	for _, n := range rapid.Permutation(order(len(d.prose))).Draw(d.T, "topics") {
		if !d.flip("topic") {
			continue
		}
		template := rapid.SampledFrom(d.prose[n]).Draw(d.T, "sentence")
		text, said := d.filled(template)
		for _, f := range said {
			d.page.say(f.What, f.Value, text)
		}
		if !strings.ContainsAny(template, "{[") {
			d.page.Not = append(d.page.Not, text)
		}
		list = append(list, text)
	}
	gap := "\n\n"
	return strings.Join(list, gap) + gap + d.small(len(list))
}

func order(n int) (list []int) {
	for i := range n {
		list = append(list, i)
	}
	return list
}

// small gives words that tell the language where little else does.
func (d *drawing) small(sentences int) string {
	return map[string]string{
		"de": "Diese Hinweise sind vor der Arbeit zu lesen und nicht durch andere zu ersetzen.",
		"fr": "Lire ces conseils avant le travail et ne pas les remplacer par d'autres.",
		"es": "Lea estas indicaciones antes del trabajo y no las cambie por otras.",
		"it": "Leggere queste indicazioni prima del lavoro e non sostituirle con altre.",
		"pt": "Leia estas indicações antes do trabalho e não as troque por outras.",
		"nl": "Lees deze aanwijzingen voor het werk en vervang ze niet door andere.",
	}[d.tag]
}

// filled fills a sentence: {what} with a figure, [what=value|words] with its words.
func (d *drawing) filled(template string) (text string, said []Fact) {
	for template != "" {
		at := strings.IndexAny(template, "{[")
		if at < 0 {
			return text + template, said
		}
		text += template[:at]
		end := strings.IndexAny(template, "}]")
		mark := template[at+1 : end]
		if template[at] == '{' {
			printed, value := d.figure(mark)
			text += printed
			said = append(said, Fact{What: mark, Value: value})
		} else {
			fact, words, _ := strings.Cut(mark, "|")
			what, value, _ := strings.Cut(fact, "=")
			text += words
			said = append(said, Fact{What: what, Value: value})
		}
		template = template[end+1:]
	}
	return text, said
}

// line is a row of a table: its label and what leads to its figure.
func (d *drawing) line(label, figure string) string {
	gap := max(3, 50-len([]rune(label)))
	switch d.leader {
	case "dots":
		return label + " " + strings.Repeat(".", gap) + " " + figure
	case "colon":
		return label + ": " + figure
	case "tab":
		return label + "\t" + figure
	case "collapsed":
		return label + "   " + figure
	}
	return label + strings.Repeat(" ", gap) + figure
}

// rows draws rows of a table whose things begin so, with some of other jobs between them.
func (d *drawing) rows(prefix string, others []string, row func(what, label string) string) string {
	var list []string
	for _, e := range append(append([]entry{}, torques...), volumes...) {
		if labels := d.labels[e.what]; strings.HasPrefix(e.what, prefix) && len(labels) > 0 && d.flip(e.what) {
			list = append(list, row(e.what, rapid.SampledFrom(labels).Draw(d.T, "label")))
		}
	}
	for _, label := range rapid.Permutation(others).Draw(d.T, "others")[:d.number("count", 0, 3)] {
		list = append(list, row("", label))
	}
	return strings.Join(rapid.Permutation(list).Draw(d.T, "rows"), "\n")
}

func (d *drawing) torqueTable() string {
	columns := d.twin && d.flip("columns") && d.leader != "colon"
	title := d.titles[0]
	if columns {
		title = d.line(title, d.cells(d.unit[0], d.unit[1]))
	}
	return title + "\n" + d.rows("bolt.", d.others[0], func(what, label string) string {
		n := d.number("torque", 9, 30)
		text := strconv.Itoa(n) + " " + d.unit[0]
		switch {
		case columns:
			text = d.cells(strconv.Itoa(n), d.tenths(n))
		case d.twin:
			text += " (" + d.tenths(n) + " " + d.unit[1] + ")"
		}
		return d.told(what, label, text, strconv.Itoa(n)+" N·m")
	})
}

func (d *drawing) cells(a, b string) string {
	if d.leader == "blanks" || d.leader == "dots" {
		return a + strings.Repeat(" ", max(3, 10-len([]rune(a)))) + b
	}
	if d.leader == "tab" {
		return a + "\t" + b
	}
	return a + "   " + b
}

func (d *drawing) volumeTable() string {
	return d.titles[1] + "\n" + d.rows("oil.", d.others[1], func(what, label string) string {
		if what == "" {
			text, _ := d.litres(d.number("volume", 2, 60))
			return d.told("", label, text, "")
		}
		text, value := d.figure(what)
		return d.told(what, label, text, value)
	})
}

// told writes a row down, with what it says.
func (d *drawing) told(what, label, text, value string) string {
	line := d.line(label, text)
	if what == "" {
		d.page.Not = append(d.page.Not, line)
	} else {
		d.page.say(what, value, line)
	}
	return line
}
