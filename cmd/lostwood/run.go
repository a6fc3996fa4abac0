package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"path/filepath"
	"strings"

	"github.com/spf13/pflag"

	"lostwood/internal/delivery"
	"lostwood/internal/listing"
)

// A code is what the program ends with.
type code int

// The exit codes, as the README has them.
const (
	done    code = 0
	atFault code = 1 // the survey or the vehicle is at fault
	misused code = 2 // the command line is at fault
)

// A usageError is a command line that cannot be followed.
type usageError struct{ says string }

func (e *usageError) Error() string { return e.says }

func misuse(format string, a ...any) error { return &usageError{fmt.Sprintf(format, a...)} }

// A command is one thing the program does.
type command struct {
	name, arguments, does string
	run                   func(ctx context.Context, args []string, out, errs io.Writer) error
}

func commands() []command {
	return []command{
		{"make", "[SURVEY]", "make everything: meshes, patterns, cutting list, record", runMake},
		{"check", "SURVEY", "say what is wrong with a survey, and nothing else", runCheck},
		{"sizes", "[SURVEY]", "list every size, its give or take and how we know", runSizes},
		{"why", "PART.SIZE [SURVEY]", "tell how a size is known, and what it hangs on", runWhy},
		{"questions", "[SURVEY]", "list what contradicts, what is open, and what to measure next", runQuestions},
		{"offer", "[SURVEY]", "say whether the parts go together, before anything is cut", runOffer},
		{"cut", "[SURVEY]", "list what to cut and what to buy", runCut},
		{"species", "[PART] ...", "compare timbers for a part", runSpecies},
		{"patterns", "PART...", "draw some parts at full size, as PDF, SVG or DXF", runPatterns},
		{"drawings", "[PART...]", "draw parts with their dimensions, and the general arrangement", runDrawings},
		{"mesh", "PART...", "mesh some parts, as STL or 3MF", runMesh},
		{"check-mesh", "FILE.stl...", "say whether STL files are fit to cut from", runCheckMesh},
		{"smith", "[SURVEY]", "list the iron that is missing, and how to make it", runSmith},
		{"pack", "MAKER [SURVEY]", "make a zip for one maker: a cover sheet, and what he needs", runPack},
		{"record", "[SURVEY]", "print what an archive keeps, or table it for a museum's database", runRecord},
		{"archive", "[SURVEY]", "put everything up for keeping, in open formats, with checksums", runArchive},
		{"compare", "OLD NEW", "tell what is otherwise in a later issue, and what to call back", runCompare},
		{"wheel", "[WHEEL] [SURVEY]", "tell all of a wheel's figures; print its sheets", runWheel},
		{"survey", "", "print how a survey is written", runSurvey},
	}
}

// run does what the command line asks.
func run(ctx context.Context, args []string, out, errs io.Writer) code {
	err := dispatch(ctx, args, out, errs)
	var usage *usageError
	switch {
	case err == nil, errors.Is(err, pflag.ErrHelp):
		return done
	case errors.Is(err, context.Canceled):
		fmt.Fprintln(errs, "lostwood: stopped; nothing was changed")
		return atFault
	case errors.As(err, &usage):
		fmt.Fprintf(errs, "lostwood: %v\n", err)
		return misused
	}
	fmt.Fprintf(errs, "%v\n", err)
	return atFault
}

func dispatch(ctx context.Context, args []string, out, errs io.Writer) error {
	if len(args) == 0 {
		fmt.Fprint(errs, help())
		return misuse("no command was given")
	}
	switch args[0] {
	case "help", "-h", "--help":
		fmt.Fprint(out, help())
		return nil
	}
	var names []string
	for _, c := range commands() {
		if c.name == args[0] {
			return c.run(ctx, args[1:], out, errs)
		}
		names = append(names, c.name)
	}
	return misuse("%q is no command; there are %s", args[0], strings.Join(names, ", "))
}

func help() string {
	var b strings.Builder
	b.WriteString("lostwood works out the timber of a horse-drawn vehicle from its irons.\n\n")
	for _, c := range commands() {
		fmt.Fprintf(&b, "  lostwood %-28s %s\n", strings.TrimSpace(c.name+" "+c.arguments), c.does)
	}
	b.WriteString("\nWithout SURVEY the orchard wagon that comes with the program is taken.\n" +
		"lostwood COMMAND --help tells a command's options.\n" +
		"Exit codes: 0 done; 1 the survey or the vehicle is at fault; 2 the command line is at fault.\n")
	return b.String()
}

// flags starts a command's options.
func flags(name, arguments, does string, out io.Writer) *pflag.FlagSet {
	f := pflag.NewFlagSet(name, pflag.ContinueOnError)
	f.SetOutput(io.Discard)
	f.Usage = func() {
		fmt.Fprintf(out, "lostwood %s\n%s\n", strings.TrimSpace(name+" "+arguments), does)
		if f.HasFlags() {
			fmt.Fprintf(out, "\n%s", f.FlagUsages())
		}
	}
	return f
}

// parse reads options and at most that many arguments.
func parse(f *pflag.FlagSet, args []string, least, most int) ([]string, error) {
	if err := f.Parse(args); err != nil {
		if errors.Is(err, pflag.ErrHelp) {
			return nil, err
		}
		return nil, misuse("%v", err)
	}
	if f.NArg() < least {
		return nil, misuse("%s wants at least one name after it; lostwood %s --help tells more", f.Name(), f.Name())
	}
	if f.NArg() > most {
		return nil, misuse("%s takes no more than %d; there is %q besides", f.Name(), most, f.Arg(most))
	}
	return f.Args(), nil
}

// listed reads the options of a command that prints a list: its arguments, and
// how to write it.
func listed(f *pflag.FlagSet, args []string, least, most int) (rest []string, how listing.Format, err error) {
	format := f.String("format", "table", "how to write it: table, csv or json")
	if rest, err = parse(f, args, least, most); err != nil {
		return nil, how, err
	}
	if how, err = listing.ParseFormat(*format); err != nil {
		return nil, how, misuse("%v", err)
	}
	return rest, how, nil
}

// put writes files into a folder, and names each as it is there.
func put(folder string, files []delivery.File, out io.Writer) error {
	for _, file := range files {
		name := filepath.Join(folder, file.Path)
		if err := delivery.PutFile(name, file.Data); err != nil {
			return err
		}
		fmt.Fprintln(out, name)
	}
	return nil
}
