package interaction

import "drawdown/geometry/finding"

// What the model leaves out.
const (
	NoCreep    finding.Code = "model leaves out gaskets"
	NoSetting  finding.Code = "model leaves out parts"
	NoFriction finding.Code = "model leaves out friction"
	NoMeasured finding.Code = "model not measured"
)

// LeftOut lists what the model leaves out; with scatter, friction is in it.
func LeftOut(scattered bool) (list []finding.Finding) {
	for _, code := range []finding.Code{NoCreep, NoSetting, NoFriction, NoMeasured} {
		if code != NoFriction || !scattered {
			list = append(list, finding.Noted(code, nil))
		}
	}
	return list
}
