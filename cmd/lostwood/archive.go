package main

import (
	"context"
	"errors"
	"fmt"
	"io"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
	"strings"

	"lostwood/internal/bag"
	"lostwood/internal/delivery"
	"lostwood/internal/vehicle"
)

func runArchive(ctx context.Context, args []string, out, errs io.Writer) error {
	f := flags("archive", "[SURVEY]", "Puts all that make makes, the survey and its photographs into a folder for keeping,\n"+
		"with checksums (BagIt, RFC 8493). The photographs are looked for beside the survey.", out)
	folder := f.String("out", "", "the `folder` to write; out/, the vehicle's name and archive where not given")
	object := f.String("object", "", "the keeper's own `number` of the vehicle, to be found by")
	keeper := f.String("keeper", "", "`who` keeps it: an office, not a person")
	rest, err := parse(f, args, 0, 1)
	if err != nil {
		return err
	}
	src, err := open(rest)
	if err != nil {
		return err
	}
	order, j, err := wholly(src)
	if err != nil {
		return err
	}
	files, err := made(ctx, order, errs)
	if err != nil {
		return err
	}
	v := j.vehicle
	b := bag.Bag{Day: v.Date, Tags: archiveTags(v, *object, *keeper)}
	for _, f := range files {
		b.Payload = append(b.Payload, bag.File{Path: f.Path, Data: f.Data})
	}
	photos, missing, err := photographs(v, filepath.Dir(src.name))
	if err != nil {
		return err
	}
	b.Payload = append(b.Payload, photos...)
	packed, err := b.Files()
	if err != nil {
		return err
	}
	if *folder == "" {
		*folder = filepath.Join("out", v.Slug+"_issue-"+v.IssueWord()+"_archive")
	}
	var shelved []delivery.File
	for _, f := range packed {
		shelved = append(shelved, delivery.File{Path: f.Path, Data: f.Data})
	}
	if err := delivery.PutBag(*folder, shelved); err != nil {
		return err
	}
	if len(missing) > 0 {
		fmt.Fprintf(out, "Not found beside the survey, and so not kept: %s\n", strings.Join(missing, ", "))
	}
	_, err = fmt.Fprintf(out, "%d files with their checksums are in %s\n", len(packed), *folder)
	return err
}

func archiveTags(v *vehicle.Vehicle, object, keeper string) []bag.Tag {
	var tags []bag.Tag
	add := func(label, value string) {
		if value != "" {
			tags = append(tags, bag.Tag{Label: label, Value: value})
		}
	}
	add("Source-Organization", keeper)
	add("External-Identifier", object)
	add("External-Description", fmt.Sprintf("%s, issue %s of %s: its timber worked out from its irons; the survey, sizes with how each is known, patterns, meshes, lists and record", v.Name, v.Issue, v.Date.Format("2 January 2006")))
	add("Internal-Sender-Identifier", v.Hash)
	add("Bag-Software-Agent", "lostwood")
	return tags
}

// photographs reads the survey's picture files, as far as they are there.
func photographs(v *vehicle.Vehicle, beside string) (found []bag.File, missing []string, err error) {
	var names []string
	for _, i := range v.Irons {
		for _, p := range i.Photos {
			if !slices.Contains(names, p) {
				names = append(names, p)
			}
		}
	}
	for _, name := range names {
		if !filepath.IsLocal(filepath.FromSlash(name)) { // never a file from elsewhere
			missing = append(missing, name)
			continue
		}
		data, err := os.ReadFile(filepath.Join(beside, filepath.FromSlash(name)))
		switch {
		case errors.Is(err, fs.ErrNotExist):
			missing = append(missing, name)
		case err != nil:
			return nil, nil, misuse("%s cannot be read: %v", name, plain(err))
		default:
			found = append(found, bag.File{Path: "photographs/" + filepath.ToSlash(name), Data: data})
		}
	}
	return found, missing, nil
}
