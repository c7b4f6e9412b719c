package bench

import (
	"fmt"
	"net/http"
	"strings"
	"testing"
)

// A head goes to the machine shop and comes back: meanwhile the rebuild waits,
// and the sheet that accompanies it is there.
func TestMachineShop(t *testing.T) {
	t.Parallel()
	s := served(t)
	id := s.job(`{"of":"p4-head","number":"P4-7","who":"RA"}`)
	s.want(http.StatusUnprocessableEntity, s.ask("GET", "/api/jobs/"+id+".machine-shop.pdf", ""))
	s.want(http.StatusOK, s.onJob(id, `{"entry":"r","act":"ready","who":"RA"}`))
	s.want(http.StatusOK, s.onJob(id, `{"entry":"o","act":"send out","step":1,"to":"Milltown Grinding","note":"skim the face","kept":"valves in tray 3","who":"RA"}`))
	if got := s.want(http.StatusOK, s.ask("GET", "/api/jobs/"+id+".machine-shop.pdf", "")); !contains(got.body[:5], "%PDF") {
		t.Errorf("%.40q", got.body)
	}
	tighten := s.run(fmt.Sprintf(`{"of":"p4-head","work":"tighten","job":%q}`, id))
	s.enter(tighten, `{"entry":"a","act":"accept","who":"RA"}`)
	if got := s.want(http.StatusConflict, s.enter(tighten, `{"entry":"d","act":"done","step":1,"who":"RA"}`)); !strings.Contains(string(got.body), "Milltown Grinding") {
		t.Errorf("%s", got.body)
	}
	if page := string(s.want(http.StatusOK, s.ask("GET", "/jobs/"+id, "")).body); !strings.Contains(page, `data-act="back"`) || !strings.Contains(page, "machine-shop.pdf") {
		t.Error("the page does not show that the head is out")
	}
	s.want(http.StatusConflict, s.onJob(id, `{"entry":"c","act":"close","who":"RA"}`))
	s.want(http.StatusOK, s.onJob(id, `{"entry":"b","act":"back","of":"o","note":"skimmed by 0.1 mm","who":"RA"}`))
	s.want(http.StatusOK, s.enter(tighten, `{"entry":"d2","act":"done","step":1,"who":"RA"}`))
	s.want(http.StatusOK, s.ask("GET", "/api/jobs/"+id+".machine-shop.pdf", ""))
}

// The places of a joint come with what was found there, in the job or in its runs; the
// condition sheet of a run is printed with it.
func TestPlacesOfAJoint(t *testing.T) {
	t.Parallel()
	s := served(t)
	id := s.job(`{"of":"p4-engine","number":"P4-7","who":"RA"}`)
	s.want(http.StatusOK, s.onJob(id, `{"entry":"f1","act":"finding","found":"blown through","joint":"p4-head","place":{"at":[-95,0]},"who":"RA"}`))
	s.want(http.StatusOK, s.onJob(id, `{"entry":"f2","act":"finding","found":"crack","joint":"p4-head","place":{"label":"cyl 3"},"who":"RA"}`))
	s.want(http.StatusOK, s.onJob(id, `{"entry":"f3","act":"finding","found":"scoring","joint":"p4-cam-caps","place":{"station":"T2"},"who":"RA"}`))
	loosen := s.run(fmt.Sprintf(`{"of":"p4-head","work":"loosen","job":%q}`, id))
	s.want(http.StatusOK, s.enter(loosen, `{"entry":"r1","act":"finding","found":"corrosion","place":{"fastener":"M3"},"who":"MK"}`))
	places := string(s.want(http.StatusOK, s.ask("GET", "/jobs/"+id+"/places/p4-head", "")).body)
	if flags := strings.Count(places, `class="flag"`); flags != 3 || !strings.Contains(places, "Gasket blown through") || strings.Contains(places, "Scoring") {
		t.Errorf("%d flags in %s", flags, places)
	}
	s.want(http.StatusUnprocessableEntity, s.ask("GET", "/jobs/"+id+"/places/p4-none", ""))
	if got := s.want(http.StatusOK, s.ask("GET", "/runs/"+loosen+"/condition.pdf", "")); !contains(got.body[:5], "%PDF") {
		t.Errorf("%.40q", got.body)
	}
}
