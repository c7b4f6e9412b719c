package scene

// Ink is one of the few inks of a sheet. There are no other colours, so a
// raster needs a small palette and a photocopy loses nothing.
type Ink uint8

const (
	None   Ink = iota
	Black      // text, outlines
	Grey       // secondary lines and words
	Accent     // the only accent: a deep blue that prints as a dark grey
	Shade      // darker tint: boxes that do not apply
	Tint       // lighter tint: the body of the part
	White
	Inks // number of inks
)

var rgb = [Inks][3]uint8{
	None:   {255, 255, 255},
	Black:  {0x11, 0x11, 0x11},
	Grey:   {0x4a, 0x4a, 0x4a},
	Accent: {0x0f, 0x3f, 0x8c},
	Shade:  {0xdc, 0xdc, 0xd8},
	Tint:   {0xf1, 0xf1, 0xee},
	White:  {255, 255, 255},
}

var inkNames = [Inks]string{"none", "black", "grey", "accent", "shade", "tint", "white"}

// String names the ink.
func (k Ink) String() string { return inkNames[k] }

// RGB returns the ink's colour on screen and in print.
func (k Ink) RGB() (r, g, b uint8) { return rgb[k][0], rgb[k][1], rgb[k][2] }
