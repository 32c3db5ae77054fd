package quantity

// Typed brings the blanks, minus signs and fractions that phones and packagings
// have to plain ones.
func Typed(text string) string { return typed(text) }
