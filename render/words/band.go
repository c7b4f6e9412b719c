package words

// band is a figure that is known only within bounds.
type band interface {
	Ends() (low, nominal, high float64)
}

// span formats a band from low over nominal to high: 86–94–98. If the ends are
// equal once formatted, it gives one figure.
func span(b band, form string) string {
	low, nominal, high := b.Ends()
	least, middle, most := figure(low+0, form), figure(nominal+0, form), figure(high+0, form)
	if least == most {
		return middle
	}
	return least + "–" + middle + "–" + most
}
