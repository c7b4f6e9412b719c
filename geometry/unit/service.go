package unit

import "strings"

// Temperature in degrees Celsius.
type Temperature float64

// pressureScales are in megapascals: 1 bar = 0.1 MPa (BIPM, SI brochure, table
// 8).
var pressureScales = append([]scale{
	{"bar", []string{"bar"}, 0.1},
	{"kPa", []string{"kpa"}, 1e-3},
}, stressScales...)

// ParsePressure reads "16 bar" or "1.6 MPa". The unit is required.
func ParsePressure(s string) (Stress, error) {
	return parse[Stress](s, "", pressureScales, "16 bar", "230 psi")
}

const (
	freezingF = 32.0    // of water, in degrees Fahrenheit
	degreeOfF = 5.0 / 9 // in degrees Celsius
)

var temperatureScales = []scale{
	{"°C", []string{"°c", "c", "degc"}, 1},
	{"°F", []string{"°f", "f", "degf"}, degreeOfF},
}

// ParseTemperature reads "110 °C" or "230 °F". The unit is required.
func ParseTemperature(s string) (Temperature, error) {
	t, err := parse[Temperature](s, "", temperatureScales, "110 °C", "230 °F")
	if err != nil {
		return 0, err
	}
	if _, name := split(s); strings.HasSuffix(strings.ToLower(name), "f") {
		t -= freezingF * degreeOfF
	}
	return t, nil
}
