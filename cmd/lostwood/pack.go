package main

import (
	"bytes"
	"context"
	"io"
	"path"
	"strings"

	"lostwood/internal/cutlist"
	"lostwood/internal/delivery"
	"lostwood/internal/jobpack"
)

func runPack(ctx context.Context, args []string, out, errs io.Writer) error {
	f := flags("pack", "MAKER [SURVEY]", "Makes a zip for one maker (joiner, cnc, yard or smith): a cover sheet, and only the files he needs.", out)
	name := f.String("out", "", "the `file` to write; named after the vehicle and the maker where not given")
	rest, err := parse(f, args, 1, 2)
	if err != nil {
		return err
	}
	m, err := jobpack.ParseMaker(rest[0])
	if err != nil {
		return misuse("%v", err)
	}
	src, err := open(rest[1:])
	if err != nil {
		return err
	}
	order, j, err := wholly(src)
	if err != nil {
		return err
	}
	order.Only = []string{m.Folder() + "/"}
	if m == jobpack.CNC {
		order.Only = append(order.Only, delivery.Drawings)
	}
	made, err := made(ctx, order, errs)
	if err != nil {
		return err
	}
	files := packed(made, m)
	if m == jobpack.CNC {
		faces, err := drawnAll(j.vehicle, j.vehicle.Items, plotting{as: "dxf"})
		if err != nil {
			return err
		}
		for _, f := range faces {
			files = append(files, jobpack.File{Path: "faces/" + f.Path, Data: f.Data})
		}
	}
	zipped, err := zipped(j, m, files)
	if err != nil {
		return err
	}
	if *name == "" {
		*name = jobpack.Name(j.vehicle, m)
	}
	return put("", []delivery.File{{Path: *name, Data: zipped}}, out)
}

// packed are those of a delivery's files that the maker gets, as they stand in his pack.
func packed(made []delivery.File, m jobpack.Maker) []jobpack.File {
	var files []jobpack.File
	for _, f := range made {
		if inside, his := strings.CutPrefix(f.Path, m.Folder()+"/"); his {
			if m == jobpack.CNC {
				inside = "solids/" + inside
			}
			files = append(files, jobpack.File{Path: inside, Data: f.Data})
		} else if m == jobpack.CNC && strings.HasPrefix(f.Path, delivery.Drawings) {
			files = append(files, jobpack.File{Path: "drawings/" + path.Base(f.Path), Data: f.Data})
		}
	}
	return files
}

func zipped(j job, m jobpack.Maker, files []jobpack.File) ([]byte, error) {
	list, err := cutlist.MakeWith(j.vehicle, j.woods, usual(j.settings))
	if err != nil {
		return nil, err
	}
	var cover, b bytes.Buffer
	if err := jobpack.WriteCover(&cover, j.vehicle, m, list); err != nil {
		return nil, err
	}
	err = jobpack.Write(&b, j.vehicle, cover.Bytes(), files)
	return b.Bytes(), err
}

// usual puts the usual allowances where none are set.
func usual(s cutlist.Settings) cutlist.Settings {
	if s.Allowances == (cutlist.Allowances{}) {
		s.Allowances = cutlist.Usual()
	}
	return s
}
