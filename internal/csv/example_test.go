package csv_test

import (
	"fmt"

	"tidysump/internal/csv"
)

// A row of the record for a spreadsheet that has a comma in its numbers: what begins
// like a formula stays a text.
func ExampleTable() {
	t := csv.Table{Separator: ';', Decimal: ',', Columns: 3}
	for _, name := range []string{"Bike", "Oil, L", "Note"} {
		t.Text(name)
	}
	t.Text("Fellane 420")
	t.Number("2.4")
	t.Text("=drained \"warm\"")
	fmt.Printf("%q\n", t.String())
	// Output:
	// "\"Bike\";\"Oil, L\";\"Note\"\r\n\"Fellane 420\";2,4;\"'=drained \"\"warm\"\"\"\r\n"
}
