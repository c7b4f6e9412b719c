package unit

// Inches prints the length in inches, to a thousandth at most.
func (l Length) Inches() string { return plain(float64(l)/millimetresPerInch, 3) + " in" }
