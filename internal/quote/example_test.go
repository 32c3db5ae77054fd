package quote_test

import (
	"fmt"

	"tidysump/internal/quote"
)

// 3.4 L of oil at 14.50, a filter at 9.90 and 0.8 h at 68.00, with 19 % tax on top,
// the oil 10 % off. What does it cost?
func ExampleBill_Compute() {
	litres, _ := quote.Decimal("3,4", 3, 1_000_000)
	price, _ := quote.Decimal("14.5", 2, quote.Most)
	const tax = 19_000
	bill := quote.Bill{Mode: quote.Net, Lines: []quote.Line{
		{Count: litres, Price: price, Off: quote.Discount{Share: 10_000}, Rate: tax},
		{Count: quote.One, Price: 990, Rate: tax},
		{Count: quote.Tenths(46), Price: 6800, Rate: tax},
	}}
	bill.Compute()
	fmt.Println(bill.Lines[0].Amount, bill.Net, bill.Tax, bill.Total)
	// Output:
	// 4437 10867 2065 12932
}

// The estimate was 100.00 and it comes to 112.35. Must one ask first?
func ExampleExceeds() {
	share, ask := quote.Exceeds(11235, 10000)
	fmt.Printf("%.1f %% more: %v\n", float64(share)/1000, ask)
	// Output:
	// 12.4 % more: true
}
