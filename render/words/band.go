package words

// band is a figure that is known within bounds only.
type band interface {
	Ends() (low, nominal, high float64)
}

// span writes a band from low over nominal to high: 86–94–98. Where the ends are
// the same once written, one figure is enough.
func span(b band, form string) string {
	low, nominal, high := b.Ends()
	least, middle, most := figure(low+0, form), figure(nominal+0, form), figure(high+0, form)
	if least == most {
		return middle
	}
	return least + "–" + middle + "–" + most
}
