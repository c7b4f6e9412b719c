package unit

import (
	"fmt"

	"drawdown/geometry/finding"
)

// Sensible holds the least and the greatest sensible value of each quantity,
// from watch screws to the flanges of wind turbines, for files and flags. What
// is outside is a typing error. Common practice, no source, unless stated: far
// wider than usual work.
var Sensible = struct {
	Coordinate Limits // of a place on the part
	Distance   Limits // between places: pitch, size, diameter of a circle
	Reading    Limits // of a caliper or a tape
	Accuracy   Limits // of one such reading: from a micrometer to a tape

	Bore        Limits // of the part, and of a flange
	Dowel       Limits
	MachineHole Limits // any round hole of a part

	BoltLength Limits // up to the tie rods of presses
	Grip       Limits
	Engagement Limits
	Head       Limits // across flats, of a nut too
	BoltFace   Limits // bearing face under the head
	BoltHole   Limits // clearance hole
	Insert     Limits // thread insert, outside
	Thickness  Limits // of a plate, a gasket, a wall
	Strip      Limits // width of a gasket

	WrenchLength Limits // grip to drive
	Adapter      Limits // drive to fastener

	Torque  Limits // a watch screw S0.3 takes 0.0005 N·m, a stud M100 50 kN·m
	Force   Limits // preload of one bolt
	Squeeze Limits // pressure on a gasket

	Pressure    Limits // of what a joint seals
	Load        Limits // working load of a joint
	Temperature Limits // from liquid helium to red heat

	Turn        Limits // of a bolt in one stage: under 1° nobody reads a gauge
	Orientation Limits // of a row, a first hole, a scan, an adapter

	Wait     Limits // up to a check after a month's running
	Percent  Limits // of a target
	Friction Limits // from PTFE to galling stainless steel
	Bending  Limits // stiffness of a row's part
	Giving   Limits // flexibility of a bolt and its members
}{
	Coordinate: between(lengths, "-100 m", "100 m"),
	Distance:   between(lengths, "0.1 mm", "50 m"),
	Reading:    between(lengths, "0.05 mm", "50 m"),
	Accuracy:   between(lengths, "0.001 mm", "10 mm"),

	Bore:        between(lengths, "0.5 mm", "20 m"),
	Dowel:       between(lengths, "0.5 mm", "500 mm"),
	MachineHole: between(lengths, "0.2 mm", "20 m"),

	BoltLength: between(lengths, "0.5 mm", "20 m"),
	Grip:       between(lengths, "0.05 mm", "20 m"),
	Engagement: between(lengths, "0.2 mm", "1 m"),
	Head:       between(lengths, "0.5 mm", "500 mm"),
	BoltFace:   between(lengths, "0.5 mm", "1 m"),
	BoltHole:   between(lengths, "0.5 mm", "500 mm"),
	Insert:     between(lengths, "0.5 mm", "500 mm"),
	Thickness:  between(lengths, "0.01 mm", "10 m"),
	Strip:      between(lengths, "0.1 mm", "10 m"),

	WrenchLength: between(lengths, "20 mm", "10 m"),
	Adapter:      between(lengths, "1 mm", "5 m"),

	Torque:  between(torques, "0.0001 N·m", "100000 N·m"),
	Force:   between(ParseForce, "1 N", "50000 kN"),
	Squeeze: between(ParseStress, "0.01 MPa", "1000 MPa"),

	Pressure:    between(ParsePressure, "0.001 bar", "10000 bar"),
	Load:        between(ParseForce, "1 N", "1000000 kN"),
	Temperature: between(ParseTemperature, "-269 °C", "1000 °C"),

	Turn:        between(ParseAngle, "1°", "720°"),
	Orientation: between(ParseAngle, "-360°", "360°"),

	Wait:     between(ParseDuration, "1 s", "720 h"),
	Percent:  Limits{1, 100, "1 %", "100 %"},
	Friction: Limits{0.01, 1, "0.01", "1"},
	Bending:  between(ParseBendingStiffness, "1 N·mm²", "1e18 N·mm²"),
	Giving:   between(ParseFlexibility, "1e-9 mm/N", "1 mm/N"),
}

// Earliest and latest date of a card or a manual.
const (
	EarliestDate = "1900-01-01"
	LatestDate   = "2199-12-31"
)

// Limits are the least and greatest value of a quantity, in internal units, and
// as printed.
type Limits struct {
	Least, Most float64
	From, To    Written
}

// Written is a figure as printed, except for the decimal sign of the language.
type Written string

// Check reports what is wrong with a figure; written is its text.
func (l Limits) Check(written string, figure float64) error {
	if figure >= l.Least && figure <= l.Most {
		return nil
	}
	return finding.Failed(NotSensible, finding.Values{"written": written, "end": l.end(figure), "least": l.From, "most": l.To})
}

func (l Limits) end(figure float64) string {
	if figure > l.Most {
		return "most"
	}
	return "least"
}

// Within returns a parser that also checks the limits.
func Within[T ~float64](l Limits, parse func(string) (T, error)) func(string) (T, error) {
	return func(s string) (T, error) {
		v, err := parse(s)
		if err == nil {
			err = l.Check(s, float64(v))
		}
		if err != nil {
			return 0, err
		}
		return v, nil
	}
}

// ParseSensibleTorque is ParseTorque with the limits of a torque.
func ParseSensibleTorque(s string) (GivenTorque, error) {
	given, err := ParseTorque(s)
	if err == nil {
		err = Sensible.Torque.Check(s, float64(given.Nm()))
	}
	if err != nil {
		return GivenTorque{}, err
	}
	return given, nil
}

func lengths(s string) (Length, error) { return ParseLength(s, "") }

func torques(s string) (Torque, error) {
	given, err := ParseTorque(s)
	return given.Nm(), err
}

func between[T ~float64](parse func(string) (T, error), from, to Written) Limits {
	least, errLeast := parse(string(from))
	most, errMost := parse(string(to))
	if errLeast != nil || errMost != nil {
		panic(fmt.Sprint("no limits: ", from, " to ", to))
	}
	return Limits{float64(least), float64(most), from, to}
}
