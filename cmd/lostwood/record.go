package main

import (
	"bytes"
	"context"
	"io"
	"strings"

	"lostwood/internal/delivery"
	"lostwood/internal/record"
)

func runRecord(_ context.Context, args []string, out, _ io.Writer) error {
	f := flags("record", "[SURVEY]", "Prints the record for the archive (pdf), or one row for each dimension (csv, json).", out)
	format := f.String("format", "pdf", "how to write it: pdf, csv or json")
	file := f.String("out", "", "the `file` to write; a pdf is named after the vehicle where not given, a table is printed")
	rest, err := parse(f, args, 0, 1)
	if err != nil {
		return err
	}
	how := strings.ToLower(*format)
	if how != "pdf" && how != "csv" && how != "json" {
		return misuse("%q is no way to write a record; write pdf, csv or json", *format)
	}
	src, err := open(rest)
	if err != nil {
		return err
	}
	j, err := settled(src)
	if err != nil {
		return err
	}
	var b bytes.Buffer
	switch how {
	case "csv":
		err = record.WriteCSV(&b, j.vehicle)
	case "json":
		err = record.WriteJSON(&b, j.vehicle)
	default:
		err = record.WritePDF(&b, record.Model{Vehicle: j.vehicle, Survey: src.data, Accounts: j.study.Accounts(), Questions: j.study.Questions()})
	}
	if err != nil {
		return err
	}
	name := *file
	if name == "" && how != "pdf" {
		_, err := out.Write(b.Bytes())
		return err
	}
	if name == "" {
		name = j.vehicle.Slug + "_issue-" + j.vehicle.IssueWord() + "_record.pdf"
	}
	return put("", []delivery.File{{Path: name, Data: b.Bytes()}}, out)
}
