package cli

import (
	"context"
	"errors"
	"fmt"
	"os/signal"
	"syscall"

	"github.com/spf13/pflag"

	"drawdown/cmd/internal/bench"
	"drawdown/cmd/internal/flag"
	"drawdown/cmd/internal/record"
	"drawdown/geometry/finding"
)

// usualPort is the default port of the page.
const usualPort = 8470

var benchCommand = command{
	name:    "bench",
	operand: nothing,
	build: func(flags *pflag.FlagSet) runner {
		ask := benchFlags{
			port:   flags.Int("port", usualPort, "`port` of the page; 0: any free one"),
			data:   flags.String("data", "", "`folder` of the record; default: the user's data folder"),
			store:  flags.String("store", "", "`address` of a PostgreSQL database that keeps the record for several computers"),
			share:  flags.Bool("share", false, "serve the page on the workshop network too, by HTTPS"),
			noOpen: flags.Bool("no-open", false, "do not open the browser"),
		}
		flag.OfferFolders(flags, "data")
		flag.Language(flags)
		return func(p *Program, args []string) Status { return p.bench(flags, ask, args) }
	},
}

type benchFlags struct {
	port          *int
	data, store   *string
	share, noOpen *bool
}

func (p *Program) bench(flags *pflag.FlagSet, ask benchFlags, args []string) Status {
	o, err := ask.options(flags, args)
	if err != nil {
		return p.misuse(err)
	}
	if o.Folder, o.Data, err = benchFolders(o.Folder, o.Data); err != nil {
		return p.fail(Failed, err)
	}
	o.Words, o.Program = flag.Words(flags), version()
	made, err := bench.Open(o)
	switch {
	case errors.Is(err, record.InUse) && record.Announced(o.Data) != "":
		return p.openRunning(record.Announced(o.Data), *ask.noOpen)
	case errors.Is(err, bench.FolderIsFile), errors.Is(err, record.InUse), errors.Is(err, record.OnNetwork), errors.Is(err, record.NewerStore), errors.Is(err, record.NoSync):
		return p.fail(Wrong, err)
	case err != nil:
		return p.fail(Failed, err)
	}
	return p.serve(made, *ask.noOpen)
}

// serve serves the page until the program is ended.
func (p *Program) serve(made *bench.Bench, noOpen bool) Status {
	signal.Reset(syscall.SIGINT, syscall.SIGTERM) // the page shuts down in its own way
	ctx, stop := signal.NotifyContext(context.Background(), syscall.SIGINT, syscall.SIGTERM)
	defer stop()
	err := made.Serve(ctx, func(address string) { p.show(address, noOpen) })
	if closed := made.Close(); err == nil {
		err = closed
	}
	if err != nil {
		return p.fail(Failed, err)
	}
	return Done
}

// show prints the address of the page and opens it.
func (p *Program) show(address string, noOpen bool) {
	fmt.Fprintln(p.Stdout, address)
	if noOpen {
		return
	}
	if err := bench.Browse(address); err != nil {
		p.fail(Done, finding.Noted(bench.NoBrowser, finding.Values{"why": err}))
	}
}

// openRunning opens the page that another process serves for the data folder.
func (p *Program) openRunning(address string, noOpen bool) Status {
	p.show(address, noOpen)
	p.fail(Done, finding.Noted(bench.AlreadyRuns, nil))
	return Done
}

func (ask benchFlags) options(flags *pflag.FlagSet, args []string) (bench.Options, error) {
	o := bench.Options{Port: *ask.port, Share: *ask.share, Data: *ask.data, Store: *ask.store, Limits: bench.Usual}
	const most = 65534 // the next one is for the network
	switch {
	case len(args) > 1:
		return o, finding.Failed(OneAtATime, finding.Values{"sort": "folder", "written": args[1]})
	case len(args) == 1 && args[0] == "":
		return o, finding.Failed(EmptyName, nil)
	case flags.Changed("data") && *ask.data == "":
		return o, finding.Failed(flag.NoValue, finding.Values{"flag": "data"})
	case flags.Changed("store") && *ask.store == "":
		return o, finding.Failed(flag.NoValue, finding.Values{"flag": "store"})
	case *ask.port < 0 || *ask.port > most:
		return o, finding.Failed(PortRange, finding.Values{"written": *ask.port, "most": most})
	case *ask.store != "" && record.CheckAddress(*ask.store) != nil:
		return o, record.CheckAddress(*ask.store)
	case len(args) == 1:
		o.Folder = args[0]
	}
	return o, nil
}

// benchFolders returns the folders, with defaults for those that are not named.
func benchFolders(shop, data string) (string, string, error) {
	var err error
	if shop == "" {
		shop, err = bench.DefaultFolder()
	}
	if data == "" && err == nil {
		data, err = record.DefaultFolder()
	}
	return shop, data, err
}
