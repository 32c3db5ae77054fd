package csv

import "tidysump/internal/quantity"

// Amounts writes a table whose columns hold things of these kinds: the kind of a
// quantity, whose cells are numbers in its base unit and come out in the one usual
// for the person, quantity.Plain, or anything else, which is text. Cells come row
// by row; what is no number in a column of amounts is taken for its head, and the
// unit is named there. comma is for a decimal comma.
func Amounts(kinds, cells []string, system quantity.System, comma bool) string {
	table := Table{Separator: ',', Decimal: '.', Columns: len(kinds)}
	if comma {
		table.Separator, table.Decimal = ';', ','
	}
	for n, text := range cells {
		kind := quantity.Kind(kinds[n%len(kinds)])
		unit, known := quantity.Find(quantity.Usual(kind, system))
		number, isNumber := quantity.ParseNumber(text)
		switch {
		case !known && kind != quantity.Plain || text == "":
			table.Text(text)
		case isNumber:
			table.Number(quantity.Number(unit.FromBase(number), 6))
		case known:
			table.Text(text + " (" + unit.ID + ")")
		default:
			table.Text(text)
		}
	}
	return table.String()
}
