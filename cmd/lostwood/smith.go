package main

import (
	"bytes"
	"context"
	"io"
	"strings"

	"lostwood/internal/delivery"
	"lostwood/internal/listing"
	"lostwood/internal/smith"
)

func runSmith(_ context.Context, args []string, out, _ io.Writer) error {
	f := flags("smith", "[SURVEY]", "Lists the iron that is missing: what to buy and what to make, out of what, how long to cut it.", out)
	format := f.String("format", "table", "how to write it: table, csv, json, or pdf with a sketch of each")
	file := f.String("out", "", "the `file` of a pdf; named after the vehicle where not given")
	rest, err := parse(f, args, 0, 1)
	if err != nil {
		return err
	}
	pdf := strings.EqualFold(*format, "pdf")
	how, err := listing.ParseFormat(*format)
	switch {
	case err != nil && !pdf:
		return misuse("%v; or pdf", err)
	case *file != "" && !pdf:
		return misuse("--out names the file of a pdf; add --format pdf, or leave it out")
	}
	src, err := open(rest)
	if err != nil {
		return err
	}
	v, _, err := derived(src)
	if err != nil {
		return err
	}
	list := smith.Of(v)
	if !pdf {
		return list.Write(out, how)
	}
	var b bytes.Buffer
	if err := list.WritePDF(&b); err != nil {
		return err
	}
	name := *file
	if name == "" {
		name = v.Slug + "_issue-" + v.IssueWord() + "_smith.pdf"
	}
	return put("", []delivery.File{{Path: name, Data: b.Bytes()}}, out)
}
