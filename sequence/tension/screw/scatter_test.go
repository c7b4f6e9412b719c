package screw

import (
	"strings"
	"testing"

	"drawdown/render/words"
)

func TestUnknownTighteningSaysWhatIsAllowed(t *testing.T) {
	_, err := TighteningFactor("guess")
	if want := `tightening method "guess" is not known; allowed: elongation, yield, angle`; err == nil || !strings.Contains(words.English().Error(err), want) {
		t.Errorf("%v; want it to say %q", err, want)
	}
}
