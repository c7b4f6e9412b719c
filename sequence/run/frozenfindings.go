package run

import (
	"encoding/json"
	"fmt"
	"reflect"

	"drawdown/geometry/finding"
	"drawdown/geometry/unit"
)

// Findings are findings that JSON keeps whole: each value with its type, so that
// a record is worded in any language later.
type Findings []finding.Finding

// frozen is the JSON of a finding.
type frozen struct {
	Code     finding.Code           `json:"code"`
	Severity finding.Severity       `json:"severity"`
	Values   map[string]frozenValue `json:"values,omitempty"`
	At       *finding.Place         `json:"at,omitempty"`
	Ground   string                 `json:"ground,omitempty"`
}

// frozenValue is one value of a finding, by the name of its type.
type frozenValue struct {
	Type  string          `json:"type"`
	Value json.RawMessage `json:"value"`
}

// types are the values that a finding may have. What is of no type here, such as
// an error of the system, is kept as the text that it prints.
var types = map[string]reflect.Type{
	"text": reflect.TypeFor[string](), "term": reflect.TypeFor[finding.Term](),
	"count": reflect.TypeFor[int](), "number": reflect.TypeFor[float64](), "flag": reflect.TypeFor[bool](),
	"length_mm": reflect.TypeFor[unit.Length](), "angle_deg": reflect.TypeFor[unit.Angle](), "force_N": reflect.TypeFor[unit.Force](),
	"stress_MPa": reflect.TypeFor[unit.Stress](), "torque_Nm": reflect.TypeFor[unit.Torque](), "duration_min": reflect.TypeFor[unit.Duration](),
	"torque": reflect.TypeFor[unit.GivenTorque](),
	"texts":  reflect.TypeFor[[]string](), "terms": reflect.TypeFor[[]finding.Term](), "counts": reflect.TypeFor[[]int](),
	"lengths_mm": reflect.TypeFor[[]unit.Length](), "finding": reflect.TypeFor[finding.Finding](), "findings": reflect.TypeFor[[]finding.Finding](),
}

// MarshalJSON writes each finding with the types of its values.
func (list Findings) MarshalJSON() ([]byte, error) {
	all := make([]frozen, len(list))
	for i, f := range list {
		cold, err := freeze(f)
		if err != nil {
			return nil, err
		}
		all[i] = cold
	}
	return json.Marshal(all)
}

// UnmarshalJSON reads what MarshalJSON wrote.
func (list *Findings) UnmarshalJSON(data []byte) error {
	var all []frozen
	if err := json.Unmarshal(data, &all); err != nil {
		return err
	}
	*list = nil
	for _, cold := range all {
		f, err := cold.thaw()
		if err != nil {
			return err
		}
		*list = append(*list, f)
	}
	return nil
}

func freeze(f finding.Finding) (frozen, error) {
	cold := frozen{Code: f.Code, Severity: f.Severity, Ground: f.Ground, Values: map[string]frozenValue{}}
	if !reflect.ValueOf(f.At).IsZero() {
		cold.At = &f.At
	}
	for name, v := range f.Values {
		value, err := freezeValue(v)
		if err != nil {
			return frozen{}, err
		}
		cold.Values[name] = value
	}
	return cold, nil
}

func freezeValue(v any) (frozenValue, error) {
	name, kept := typeName(v), v
	switch v := v.(type) {
	case finding.Finding:
		cold, err := freeze(v)
		if err != nil {
			return frozenValue{}, err
		}
		kept = cold
	case []finding.Finding:
		kept = Findings(v)
	}
	data, err := json.Marshal(kept)
	if name == "" || err != nil {
		data, err = json.Marshal(fmt.Sprint(v))
		return frozenValue{"text", data}, err
	}
	return frozenValue{name, data}, nil
}

func typeName(v any) string {
	for name, t := range types {
		if reflect.TypeOf(v) == t {
			return name
		}
	}
	return ""
}

func (cold frozen) thaw() (finding.Finding, error) {
	f := finding.Finding{Code: cold.Code, Severity: cold.Severity, Ground: cold.Ground}
	if cold.At != nil {
		f.At = *cold.At
	}
	if len(cold.Values) > 0 {
		f.Values = finding.Values{}
	}
	for name, value := range cold.Values {
		v, err := value.thaw()
		if err != nil {
			return f, err
		}
		f.Values[name] = v
	}
	return f, nil
}

func (value frozenValue) thaw() (any, error) {
	switch value.Type {
	case "finding":
		var cold frozen
		if err := json.Unmarshal(value.Value, &cold); err != nil {
			return nil, err
		}
		return cold.thaw()
	case "findings":
		var list Findings
		err := json.Unmarshal(value.Value, &list)
		return []finding.Finding(list), err
	}
	t, known := types[value.Type]
	if !known {
		return string(value.Value), nil // of a newer program: as it is written
	}
	v := reflect.New(t)
	err := json.Unmarshal(value.Value, v.Interface())
	return v.Elem().Interface(), err
}
