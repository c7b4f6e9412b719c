package bench

import (
	"net/http"
	"slices"
	"time"

	"drawdown/cmd/internal/job"
	"drawdown/cmd/internal/record"
	"drawdown/cmd/internal/report"
	"drawdown/geometry/finding"
	"drawdown/render/sheet/shopping"
)

// exportRun sends the whole record of a run.
func (b *Bench) exportRun(w http.ResponseWriter, r *http.Request, id, ending string) error {
	return b.export(w, r, id, ending, b.store.Run, "json", "csv", "pdf")
}

// exportJob sends the whole record of a job, with its runs.
func (b *Bench) exportJob(w http.ResponseWriter, r *http.Request, id, ending string) error {
	return b.export(w, r, id, ending, b.store.Job, "json", "pdf")
}

// exportShopping sends the list of what the rebuild of a job needs.
func (b *Bench) exportShopping(w http.ResponseWriter, r *http.Request, id, form string) error {
	out, err := b.jobOut(id, b.reader(r))
	if err != nil {
		return err
	}
	list := shopping.List{ID: id, Title: out.Title, Machine: out.Machine, Number: out.Number, Order: out.Order, Supplies: out.Shopping()}
	switch form {
	case "csv":
		download(w, "attachment", id+"-shopping.csv", "text/csv; charset=utf-8")
		w.Write(shopping.CSV(list.Supplies))
	case "pdf":
		ask, err := b.printing(r)
		if err != nil {
			return err
		}
		for i, s := range list.Supplies {
			list.Supplies[i].Joints = nil
			for _, of := range s.Joints {
				list.Supplies[i].Joints = append(list.Supplies[i].Joints, out.TitleOf(of))
			}
		}
		files, err := job.ShoppingList(list, ask)
		if err != nil {
			return failure{http.StatusUnprocessableEntity, err}
		}
		download(w, "inline", files[0].Name, "application/pdf")
		w.Write(files[0].Data)
	default:
		return wrong(http.StatusNotFound, NoFormat, finding.Values{"written": cut("shopping." + form), "allowed": []string{"shopping.pdf", "shopping.csv"}})
	}
	return nil
}

// exportMachineShop sends the sheet that accompanies parts to the machine shop.
func (b *Bench) exportMachineShop(w http.ResponseWriter, r *http.Request, id string) error {
	if _, err := b.store.Job(id); err != nil {
		return err
	}
	whole, err := b.store.Export(id)
	if err != nil {
		return err
	}
	ask, err := b.printing(r)
	if err != nil {
		return err
	}
	files, _, err := job.MachineShopSheet(whole, b.store.File, time.Local, ask)
	if err != nil {
		return failure{http.StatusUnprocessableEntity, err}
	}
	download(w, "inline", files[0].Name, "application/pdf")
	w.Write(files[0].Data)
	return nil
}

func (b *Bench) export(w http.ResponseWriter, r *http.Request, id, ending string, find func(string) (record.Started, error), forms ...string) error {
	if _, err := find(id); err != nil {
		return err
	}
	if !slices.Contains(forms, ending) {
		return wrong(http.StatusNotFound, NoFormat, finding.Values{"written": cut(ending), "allowed": forms})
	}
	whole, err := b.store.Export(id)
	if err != nil {
		return err
	}
	switch ending {
	case "json":
		download(w, "attachment", id+".json", "application/json; charset=utf-8")
		text, err := report.JSON(whole)
		if err != nil {
			return err
		}
		w.Write(text)
	case "csv":
		text, err := whole.CSV()
		if err != nil {
			return err
		}
		download(w, "attachment", id+".csv", "text/csv; charset=utf-8")
		w.Write(text)
	case "pdf":
		return b.exportPDF(w, r, whole)
	}
	return nil
}

// exportPDF sends the record as sheets to sign.
func (b *Bench) exportPDF(w http.ResponseWriter, r *http.Request, whole record.Export) error {
	ask, err := b.printing(r)
	if err != nil {
		return err
	}
	files, _, err := job.RecordSheet(whole, b.store, time.Local, ask)
	if err != nil {
		return failure{http.StatusUnprocessableEntity, err}
	}
	download(w, "inline", files[0].Name, "application/pdf")
	w.Write(files[0].Data)
	return nil
}

// frozenOf reads again what a run was started from.
func (b *Bench) frozenOf(id string) (job.Frozen, error) {
	started, err := b.store.Run(id)
	if err != nil {
		return job.Frozen{}, err
	}
	return b.thawed(started.Of, started.Files)
}
