package wrench

import (
	"math"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// effectiveLength returns the length of wrench and adapter at which the hand
// acts on the fastener, in mm. The angle of the adapter is measured from the
// centre line of the wrench: 0° straight out, 90° no correction, 180° back over
// the handle.
func effectiveLength(wrench, adapter unit.Length, angle unit.Angle) float64 {
	cosine := math.Cos(float64(angle) * math.Pi / 180)
	if math.Abs(cosine) < 1e-12 {
		cosine = 0 // at 90° the adapter has no effect
	}
	return float64(wrench) + float64(adapter)*cosine
}

// Setting returns what to set on a wrench with an adapter to apply a torque to
// the fastener.
func Setting(torque unit.Torque, wrench, adapter unit.Length, angle unit.Angle) unit.Torque {
	return torque * unit.Torque(float64(wrench)/effectiveLength(wrench, adapter, angle)) // TM 1-1500-204-23-9: setting = T L/(L + A cos)
}

// FastenerTorque returns the torque on the fastener for a setting; the inverse
// of Setting.
func FastenerTorque(setting unit.Torque, wrench, adapter unit.Length, angle unit.Angle) unit.Torque {
	return setting * unit.Torque(effectiveLength(wrench, adapter, angle)/float64(wrench)) // TM 9-254: T = setting (L + A cos)/L
}

// checkAdapter reports what is wrong with a wrench and its adapter.
func checkAdapter(wrench, adapter unit.Length, angle unit.Angle) error {
	const longest unit.Length = 3000 // common practice, no source: no hand wrench is longer
	if !(adapter >= 0 && adapter <= longest) {
		return finding.Failed(AdapterRange, finding.Values{"adapter": adapter, "most": longest})
	}
	if adapter == 0 {
		return nil
	}
	if wrench == 0 {
		return finding.Failed(NoLength, finding.Values{"adapter": adapter, "most": longest})
	}
	if !(wrench > 0 && wrench <= longest) {
		return finding.Failed(LengthRange, finding.Values{"length": wrench, "adapter": adapter, "most": longest})
	}
	if !(angle >= -360 && angle <= 360) {
		return finding.Failed(AdapterAngleRange, finding.Values{"angle": angle})
	}
	if left := effectiveLength(wrench, adapter, angle); left < leastLever*float64(wrench) {
		return finding.Failed(LeverTooShort, finding.Values{"adapter": adapter, "angle": angle, "lever": unit.Length(left), "length": wrench})
	}
	return nil
}

// leastLever is the least lever that must remain, as a share of the wrench's
// length (common practice, no source): below it, the setting diverges.
const leastLever = 0.2
