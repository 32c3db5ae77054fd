package manual

import (
	"slices"
	"strconv"
	"strings"

	"tidysump/internal/quantity"
)

// A schedule is a table whose head names distances and times, and whose rows have a mark
// below those at which the row's work is due.

// scheduleColumn is a column of a schedule.
type scheduleColumn struct {
	fact  *fact
	every bool // "every 6,000 km", and not "6,000 km"
	first bool // "first service, 1,000 km"
	hard  bool
	mid   int // its middle, in half letters
	bars  int // lines before it that part cells, 0 for none
}

// scheduleRow is what is due in a row of a schedule.
type scheduleRow struct {
	subjects []string
	from, to int    // tokens
	marked   []bool // of each column
	doubtful bool   // that it is changed is said by nothing but its mark
	told     bool   // the page says what its marks mean
}

// schedule is such a table.
type schedule struct {
	head    int // the token that begins its head
	columns []scheduleColumn
	rows    []scheduleRow
}

// schedules finds the tables whose rows have marks below distances and times, and the tokens
// at which those begin.
func (r *readings) schedules(long []*fact) (list []schedule, heads map[int]bool) {
	at := map[int]*fact{}
	for _, f := range long {
		at[f.from] = f
	}
	heads = map[int]bool{}
	for n := 0; n+1 < len(r.pieces); n++ {
		s := schedule{columns: r.scheduleColumns(n, at)}
		if len(s.columns) < 2 {
			continue
		}
		if s.rows = r.scheduleRows(n, s.columns); len(s.rows) == 0 {
			continue
		}
		s.head, _ = r.pieceTokens(n)
		r.dueHeads = append(r.dueHeads, n)
		for i := range s.columns {
			heads[s.columns[i].fact.from] = true
		}
		list = append(list, s)
	}
	return list, heads
}

// scheduled reads what a schedule says.
func (r *readings) scheduled(s *schedule) {
	var engine *scheduleRow
	for i := range s.rows {
		if contains(s.rows[i].subjects, "engine") {
			engine = &s.rows[i]
			break
		}
	}
	for i := range s.rows {
		r.due(s, &s.rows[i], engine)
	}
}

// scheduleColumns gives the columns of a schedule whose head a line is; nil for another line.
func (r *readings) scheduleColumns(n int, long map[int]*fact) (list []scheduleColumn) {
	from, to := r.pieceTokens(n)
	if !r.pieces[n].cells {
		return nil
	}
	var bare []int // columns of numbers without units
	unit, times := r.unitOver(n)
	for i := from; i < to; {
		if r.places[i].text == "|" {
			i++
			continue
		}
		end := i + 1
		for end < to && !r.edge(end) {
			end++
		}
		c := scheduleColumn{mid: r.places[i].col + r.places[end-1].end, bars: r.bars(from, i)}
		for k := i; k < end; k++ {
			if f := long[k]; f != nil && c.fact == nil {
				c.fact = f
			}
			c.told(r.termAt(k))
		}
		if f := c.fact; f != nil && times == 1000 && f.end() == i+1 {
			c.fact = nil // its unit is the head's, which counts thousands: "(km x 1000)   1   5"
		}
		if c.fact != nil {
			r.toldOver(n, &c)
		}
		switch f := c.fact; {
		case i == from && f != nil && r.overLabels(n) && f.kind == string(quantity.Distance) && (f.text == "1000 km" || f.text == "1000 mi"):
			unit, times = f.unit, 1000 // "(x 1000 km)"
		case i == from && f != nil && r.overLabels(n):
			return nil
		case len(list) == 0 && end < to && (f == nil || r.timesIn(i, end)) && r.headUnit(i, end) != "":
			unit, times = r.headUnit(i, end), r.timesOf(i, end) // "mileage in km (x 1000)", "Kilometerstand x 1000", "Months"
		case f != nil && len(list) == 0 && r.timesThousand(i, f):
			unit, times = f.unit, 1000 // "Item    x 1,000 km    1    12"
		case i == from && f == nil && (r.places[i].kind != number || r.overLabels(n)):
		case f == nil && len(list) == 0 && r.wordsIn(i, end) && !r.ofRow(from, end): // "Item    Frequency    x 1,000 km"
		case f != nil:
			list = append(list, c)
		default:
			v, next, ok := r.columnCount(i)
			if !ok && end == to && len(list) > 0 && r.places[i].kind == word {
				break // "Remarks"
			}
			if !ok || next != end || v.fraction {
				return nil
			}
			g := r.amount(i, end, "km", v, v, "")
			c.fact = &g
			bare = append(bare, len(list))
			list = append(list, c)
		}
		i = end
	}
	for _, k := range bare {
		f := list[k].fact
		v, _, _ := r.columnCount(f.from)
		switch last := list[len(list)-1].fact; {
		case unit != "" && (times == 1 || unit == "months" || unit == "h"):
			*f = r.amount(f.from, f.to, unit, v, v, "")
		case unit != "":
			if v.step == 1 {
				v.text += "000"
			} else if v.text = strconv.FormatFloat(v.v*1000, 'f', -1, 64); !strings.HasSuffix(v.text, "500") { // "7.5" is 7,500; a row of miles has others
				return nil
			}
			v.v, v.step, v.marked = v.v*1000, 1, false
			*f = r.amount(f.from, f.to, unit, v, v, "")
		case last.kind == string(quantity.Distance) && bare[len(bare)-1] != len(list)-1:
			*f = r.amount(f.from, f.to, last.unit, v, v, "")
		default:
			return nil
		}
	}
	return list
}

// columnCount reads the number of a column, also one that was given the unit of the head it stands behind.
func (r *readings) columnCount(i int) (v value, next int, ok bool) {
	if f := r.factAt(i); f != nil && f.from == i && f.end() == i+1 && f.kind == string(quantity.Distance) && r.places[i].kind == number {
		return r.figureAt(i)
	}
	return r.valueAt(i)
}

// edge reports whether a cell of a table begins at a token, or a line that parts cells stands there.
func (r *readings) edge(i int) bool {
	return r.places[i].gap == wide || r.places[i].text == "|" || i > 0 && r.places[i-1].text == "|"
}

// ofRow reports whether between two tokens a thing is named of which a row is; "élément" alone is the
// head of a column too.
func (r *readings) ofRow(from, to int) bool {
	for n := r.mentionFrom(from); n < len(r.mentions) && r.mentions[n].from < to; n++ {
		if m := &r.mentions[n]; m.foreign || m.part == "" && m.oil || m.to-m.from > 1 {
			return true
		}
	}
	return false
}

// bars counts the lines that part cells between two tokens.
func (r *readings) bars(from, to int) (n int) {
	for i := from; i < to; i++ {
		if r.places[i].text == "|" {
			n++
		}
	}
	return n
}

// wordsIn reports whether nothing but words and their signs stands between two tokens.
func (r *readings) wordsIn(from, to int) bool {
	for i := from; i < to; i++ {
		if r.places[i].kind == number {
			return false
		}
	}
	return r.places[from].kind == word
}

// told notes what a word of a column's head says.
func (c *scheduleColumn) told(t *term) {
	if t != nil {
		c.every = c.every || t.has("when.every") || t.has("every.year") || t.has("every.half-year")
		c.first = c.first || t.has("when.first")
		c.hard = c.hard || t.has("when.severe")
	}
}

// toldOver notes what the line above a head says in the cell over a column: "first  every"
// over "1,000 km  6,000 km".
func (r *readings) toldOver(n int, c *scheduleColumn) {
	if n == 0 || !r.pieces[n-1].cells {
		return
	}
	from, to := r.pieceTokens(n - 1)
	if r.numbered(from, to) {
		return
	}
	first, last, apart := 0, 0, 4*mostOffCell
	for i := from; i < to; {
		end := i + 1
		for end < to && r.places[end].gap != wide {
			end++
		}
		if d := abs(r.places[i].col + r.places[end-1].end - c.mid); d < apart {
			first, last, apart = i, end, d
		}
		i = end
	}
	for i := first; i < last; i++ {
		c.told(r.termAt(i))
	}
}

// headUnit gives the unit of which a cell says that its row is, or that of thousands: "km", "mileage in
// km (x 1000)", "Months"; "" for none.
func (r *readings) headUnit(from, to int) (unit string) {
	for i := from; i < to; i++ {
		t := &r.places[i]
		e := r.termAt(i)
		switch {
		case t.kind == number && r.timesOf(i, i+1) == 1:
			return ""
		case strings.HasPrefix(t.fold, "kilomet"), strings.HasPrefix(t.fold, "quilomet"), t.fold == "km":
			unit = "km"
		case t.fold == "mi", strings.HasPrefix(t.fold, "mile"), strings.HasPrefix(t.fold, "mill"):
			unit = "mi"
		case e == nil:
		case e.has("unit.months"):
			unit = "months"
		case e.has("unit.h"):
			unit = "h"
		}
	}
	return unit
}

// timesOf says with what a cell multiplies the numbers of its row: 1000, or 1.
func (r *readings) timesOf(from, to int) int {
	for i := from; i < to; i++ {
		if t := &r.places[i]; t.text == "1000" || t.text == "1.000" || t.text == "1,000" {
			return 1000
		}
	}
	return 1
}

// unitOver gives the unit that the line above a table's head says of its bare numbers: "Odometer
// reading (x 1,000 km)" over "1   6   12".
func (r *readings) unitOver(n int) (unit string, times int) {
	if n == 0 || r.pieces[n].blank || r.pieces[n-1].heading {
		return "", 1
	}
	from, to := r.pieceTokens(n - 1)
	if unit = r.headUnit(from, to); unit == "" || to-from > mostHead {
		return "", 1
	}
	return unit, r.timesOf(from, to)
}

// timesIn reports whether a sign for times stands between two tokens.
func (r *readings) timesIn(from, to int) bool {
	for i := from; i < to; i++ {
		if t := &r.places[i]; t.text == "×" || t.fold == "x" {
			return true
		}
	}
	return false
}

// timesThousand reports whether a cell says no distance but what the numbers of its line are
// multiplied with: "x 1,000 km".
func (r *readings) timesThousand(from int, f *fact) bool {
	t := &r.places[from]
	return from < f.from && (t.fold == "x" || t.text == "×") && (f.text == "1000 km" || f.text == "1000 mi")
}

// overLabels reports whether the first cell of a table's head stands over the labels of its
// rows, and not over their first column.
func (r *readings) overLabels(n int) bool {
	label := r.pieces[n+1].tokens
	return r.pieces[n].tokens[0].col <= label[0].col+mostIndent
}

// mostSchedule is how many lines a schedule has at most.
const mostSchedule = 60

// scheduleRows gives the rows below a schedule's head in which something of ours is due.
func (r *readings) scheduleRows(head int, columns []scheduleColumn) (list []scheduleRow) {
	for n := head + 1; n < len(r.pieces) && n <= head+mostSchedule && !r.pieces[n].blank; n++ {
		from, to := r.pieceTokens(n)
		if r.places[from].kind == number && from+1 < to && r.edge(from+1) && len(r.places[from].text) <= 2 {
			from++ // the number of the row
		}
		label := from
		for label < to && (label == from || !r.edge(label)) {
			label++
		}
		row := scheduleRow{from: from, to: to, marked: make([]bool, len(columns))}
		subjects, foreign := r.dueIn(from, label)
		change := r.about(from, label, "when.change") || r.about(from, label, "amount.change")
		if foreign || len(subjects) == 0 || r.looks(from, label) && !contains(subjects, "strainer") {
			continue
		}
		for _, s := range subjects {
			if s == anyOil {
				s = "engine"
			}
			row.subjects = append(row.subjects, s)
		}
		any := false
		beside := (columns[1].mid - columns[0].mid) * 3 / 4 // what stands further out is below no column
		for i := label; i < to; i++ {
			due, sure := r.markAt(i, to, contains(subjects, "strainer"))
			mid := r.places[i].col + r.places[i].end
			if outside := mid < columns[0].mid-beside || mid > columns[len(columns)-1].mid+beside; !due || outside && columns[0].bars == 0 {
				continue
			}
			best, bars := 0, r.bars(from, i)
			for k := range columns {
				if abs(columns[k].mid-mid) < abs(columns[best].mid-mid) {
					best = k
				}
			}
			if columns[0].bars > 0 && bars > 0 { // however its lines are set
				if best = slices.IndexFunc(columns, func(c scheduleColumn) bool { return c.bars == bars }); best < 0 {
					continue
				}
			}
			row.marked[best], any = true, true
			row.doubtful = row.doubtful || !sure && !change
			row.told = row.told || sure
		}
		if any {
			list = append(list, row)
		}
	}
	return list
}

// dueIn gives what the label of a row names, also with several verbs: "Change the engine oil and oil
// filter, clean the oil screen".
func (r *readings) dueIn(from, to int) (list []string, foreign bool) {
	for end := to; ; {
		some, other := r.changedBefore(from, end)
		list, foreign = append(some, list...), foreign || other
		n := r.mentionFrom(end) - 1
		for n > 0 && r.mentions[n-1].from >= from && r.onlyJoins(r.mentions[n-1].to, r.mentions[n].from) {
			n--
		}
		if n < 1 || r.mentions[n-1].from < from || !r.verbJoins(r.mentions[n-1].to, r.mentions[n].from) {
			return list, foreign
		}
		end = r.mentions[n].from
	}
}

// verbJoins reports whether nothing stands between two names but "and" or a comma, and the verb of
// changing or cleaning what is named behind.
func (r *readings) verbJoins(from, to int) bool {
	verb := false
	for i := from; i < to; i++ {
		does := r.senseAt(i, "when.change") || r.senseAt(i, "action.wash")
		verb = verb || does
		if t := &r.places[i]; !does && !t.function && !r.senseAt(i, "join.and") && !r.senseAt(i, "known") && !(t.kind == sign && strings.Contains(",;+&", t.text)) {
			return false
		}
	}
	return verb
}

// markAt reads the mark of a cell: a sign, or a letter that the page explains. due reports
// that something is changed there, or cleaned if it is only that; sure that the page says so
// of the mark.
func (r *readings) markAt(i, to int, cleaned bool) (due, sure bool) {
	t := &r.places[i]
	if !r.edge(i) || t.text == "|" || t.taken {
		return false, false
	}
	if e := r.termAt(i); e != nil && e.from == i && (e.to >= to || r.edge(e.to)) { // "Replace", "Clean"
		if e.has("when.change") || e.has("amount.change") {
			return true, true
		} else if e.has("other.action") {
			return cleaned, cleaned
		}
	}
	if i+1 < to && !r.edge(i+1) && !r.places[i+1].moved {
		return false, false
	}
	switch {
	case t.kind == sign && strings.Contains("●·○◆■□✓✔√×*+", t.text), t.fold == "x":
		due = true
	case t.kind != word || len(t.text) > 2:
		return false, false
	}
	for k := range r.places { // the legend: "R: replace", "● = change"
		q := &r.places[k]
		if q.text != t.text || k == i || q.gap == wide && k+1 < len(r.places) && r.places[k+1].gap == wide {
			continue
		}
		next := k + 1
		for next < len(r.places) && r.places[next].kind == sign && r.places[next].gap != wide && next < k+3 {
			next++
		}
		e := r.termAt(next)
		if e == nil || e.from != next || r.places[next].piece != q.piece {
			continue
		}
		switch {
		case e.has("when.change") || e.has("amount.change"):
			return true, true
		case e.has("other.action") || e.has("level.check"):
			return cleaned, cleaned
		}
	}
	return due, false
}

// due reads at which columns a row is due.
func (r *readings) due(table *schedule, row, engine *scheduleRow) {
	columns := table.columns
	say := func(f *fact, subject, role string, doubted bool) {
		what := intervalOf(f, subject, role)
		if what == "" {
			return
		}
		doubts := r.witnesses(f)
		if doubted || row.doubtful {
			doubts = append(doubts, doubt("manual-by-context", "text", f.text))
		}
		f.used = true
		r.sayOf(what, f.text, table.head, f.end(), f.from, doubts...)
	}
	every := false
	for i := range columns {
		every = every || columns[i].every
	}
	clear := len(columns) >= leastGrid && row.told
	grid := 0 // where the columns begin that are each so far from the one before it
	if !every {
		if grid = gridOf(columns); grid < 0 {
			return
		}
	}
	for _, s := range row.subjects {
		if s == "filter" && contains(row.subjects, "engine") || engine != nil && (s == "filter" || s == "strainer") && slices.Equal(row.marked, engine.marked) {
			from := row.from
			if s == "filter" {
				from = min(from, engine.from)
			}
			r.say(s+".every", "1", from, row.to)
			continue
		}
		for i := range columns {
			c := &columns[i]
			switch {
			case !row.marked[i], c.every && row.often(columns, i):
			case c.hard:
				say(c.fact, s, severe, false)
			case c.first || i == 0 && (every && !c.every || grid > 0):
				say(c.fact, s, first, !c.first && !sooner(c, columns) && !(clear && grid > 0 && columns[grid].fact.low >= leastTimes*c.fact.low))
			case every:
				say(c.fact, s, regular, false)
			}
		}
		if every {
			continue
		}
		if i := stepOf(row.marked[grid:]); i >= 0 {
			say(columns[grid+i].fact, s, regular, !clear)
		}
	}
}

// often reports whether a row is also marked in a column of a shorter time, of which a column's is a
// multiple: what is done every 10 hours is done every 20 too.
func (row *scheduleRow) often(columns []scheduleColumn, i int) bool {
	f := columns[i].fact
	for k := range columns {
		c := &columns[k]
		if !c.every || c.hard != columns[i].hard || !row.marked[k] || c.fact.kind != f.kind || c.fact.low >= f.low {
			continue
		}
		if times := f.low / c.fact.low; abs64(times-float64(int(times+0.5))) <= stepSlack {
			return true
		}
	}
	return false
}

// leastGrid is how many columns a schedule has at least whose equal steps say how often a thing is
// done, where the page says what its marks mean.
const leastGrid = 4

// sooner reports whether a column is told by its distance to be of a first service.
func sooner(c *scheduleColumn, columns []scheduleColumn) bool {
	for i := range columns {
		if f := columns[i].fact; columns[i].every && f.kind == c.fact.kind && f.low >= leastTimes*c.fact.low {
			return true
		}
	}
	return false
}

// gridOf gives the column from which on the head of a schedule counts in equal steps, each
// column one step more: the first, or the second behind a first service. -1 for none.
func gridOf(columns []scheduleColumn) int {
	for start := range 2 {
		steps := columns[start:]
		if len(steps) < 2 || start == 1 && columns[0].fact.low >= steps[0].fact.low {
			break
		}
		even := true
		for k := range steps {
			f := steps[k].fact
			even = even && f.kind == steps[0].fact.kind && abs64(f.low-float64(k+1)*steps[0].fact.low) <= stepSlack*f.low
		}
		if even {
			return start
		}
	}
	return -1
}

// stepSlack is how far a column of a schedule may be from its step: distances in miles beside
// kilometres are rounded. From memory.
const stepSlack = 0.03

// stepOf gives the column at whose multiples, and at no others, a row has its marks; -1 for
// none.
func stepOf(marked []bool) int {
	for step := range marked {
		even := true
		for k := range marked {
			even = even && marked[k] == ((k+1)%(step+1) == 0)
		}
		if even {
			return step
		}
	}
	return -1
}
