package csv_test

import (
	stdcsv "encoding/csv"
	"strings"
	"testing"

	"pgregory.net/rapid"

	"tidysump/internal/csv"
)

// What a spreadsheet would take for a formula, by OWASP's page on CSV Injection.
func TestTable_Formulas(t *testing.T) {
	for text, want := range map[string]string{
		"=1+1": "'=1+1", "+49 30": "'+49 30", "-10 %": "'-10 %", "@home": "'@home", "\tx": "'\tx", "\rx": "'\rx", "\nx": "'\nx",
		"＝1": "'＝1", "  =1": "'  =1", "=1\";\"=2": "'=1\"\";\"\"=2", "\x00=1": "'=1",
		"1+1": "1+1", "a=b": "a=b", "'tis": "'tis", "£5": "£5",
	} {
		table := csv.Table{Separator: ',', Decimal: '.', Columns: 1}
		table.Text(text)
		if got := table.String(); got != `"`+want+"\"\r\n" {
			t.Errorf("%q is written %q, want %q", text, got, want)
		}
	}
}

func TestTable_Numbers(t *testing.T) {
	table := csv.Table{Separator: ';', Decimal: ',', Columns: 3}
	for _, n := range []string{"-0.25", "12400", "1e9"} {
		table.Number(n)
	}
	if got := table.String(); got != "-0,25;12400;1e9\r\n" {
		t.Errorf("got %q", got)
	}
}

// The standard library reads every text back, but for the apostrophe of a formula
// and the breaks, which it makes one kind of.
func TestTable_ReadBack(t *testing.T) {
	rapid.Check(t, func(t *rapid.T) {
		separator := rapid.SampledFrom([]byte{',', ';'}).Draw(t, "separator")
		columns := rapid.IntRange(1, 4).Draw(t, "columns")
		texts := rapid.SliceOfN(rapid.StringMatching(`[a-z=+@,;"\n🛢-]{1,12}`), columns, columns).Draw(t, "texts")
		table := csv.Table{Separator: separator, Decimal: '.', Columns: columns}
		for _, text := range texts {
			table.Text(text)
		}
		r := stdcsv.NewReader(strings.NewReader(table.String()))
		r.Comma = rune(separator)
		rows, err := r.ReadAll()
		if err != nil || len(rows) != 1 || len(rows[0]) != columns {
			t.Fatalf("%q: %v %q", table.String(), err, rows)
		}
		for n, text := range texts {
			if got := rows[0][n]; got != text && got != "'"+text || strings.ContainsAny(got[:1], "=+-@\n") {
				t.Fatalf("%q came back as %q", text, got)
			}
		}
	})
}
