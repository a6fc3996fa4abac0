package main

import (
	"bytes"
	"context"
	"errors"
	"fmt"
	"io"
	"os"
	"strconv"
	"strings"

	"lostwood/internal/delivery"
	"lostwood/internal/mesh"
	"lostwood/internal/quantity"
	"lostwood/internal/vehicle"
)

func runMesh(_ context.Context, args []string, out, _ io.Writer) error {
	f := flags("mesh", "PART...", "Meshes the parts that are named, by number, id or name.", out)
	from := f.String("survey", "", "the survey's `file`; the orchard wagon where not given")
	folder := f.String("out", ".", "the `folder` to write into")
	tolerance := f.Float64("tolerance", 0.05, "how far a mesh may lie from the true surface, in `mm`")
	as := f.String("as", "stl", "stl (one file a part) or 3mf (one file, an object a part)")
	rest, err := parse(f, args, 1, 1000)
	if err != nil {
		return err
	}
	if *as != "stl" && *as != "3mf" {
		return misuse("--as %s is no kind of mesh; stl or 3mf would do", *as)
	}
	if err := tolerable(*tolerance); err != nil {
		return err
	}
	v, items, err := asked(*from, rest)
	if err != nil {
		return err
	}
	files, err := meshed(v, items, quantity.Length(*tolerance)*quantity.Millimetre, *as)
	if err != nil {
		return err
	}
	return put(*folder, files, out)
}

func tolerable(mm float64) error {
	if mm >= 0.005 && mm <= 5 {
		return nil
	}
	return misuse("--tolerance %v is no tolerance to work to; 0.005 to 5 mm would do", mm)
}

// meshed makes the files of some items.
func meshed(v *vehicle.Vehicle, items []*vehicle.Item, tolerance quantity.Length, as string) ([]delivery.File, error) {
	var files []delivery.File
	var objects []mesh.Object
	for _, it := range items {
		m, err := delivery.Mesh(it, tolerance)
		if err != nil {
			return nil, fmt.Errorf("%s: %w", it.Name, err)
		}
		if as == "3mf" {
			objects = append(objects, mesh.Object{Mesh: m, Name: delivery.Title(it), Number: strconv.Itoa(it.Number)})
			continue
		}
		var b bytes.Buffer
		if err := delivery.WriteMesh(&b, v, it, m); err != nil {
			return nil, fmt.Errorf("%s: %w", it.Name, err)
		}
		files = append(files, delivery.File{Path: v.Stem(it) + ".stl", Data: b.Bytes()})
	}
	if as == "stl" {
		return files, nil
	}
	var b bytes.Buffer
	if err := mesh.Write3MF(&b, mesh.Package{Issue: v.Issue, Survey: v.Hash, Parts: objects}); err != nil {
		return nil, err
	}
	return []delivery.File{{Path: v.Slug + "_parts_mm_issue-" + v.IssueWord() + ".3mf", Data: b.Bytes()}}, nil
}

// chosen finds the items that words name: a number, an id, a name, or all.
// A hand may stand before an id or name: near-reach.
func chosen(v *vehicle.Vehicle, words []string) ([]*vehicle.Item, error) {
	var out []*vehicle.Item
	taken := map[*vehicle.Item]bool{}
	for _, w := range words {
		found := false
		for _, it := range v.Items {
			if !means(w, it) {
				continue
			}
			found = true
			if !taken[it] {
				taken[it] = true
				out = append(out, it)
			}
		}
		if !found {
			var ids []string
			for _, it := range v.Items {
				if n := len(ids); n == 0 || ids[n-1] != it.ID {
					ids = append(ids, it.ID)
				}
			}
			return nil, misuse("%q is no part that can be made of the %s; there are %s, or all", w, v.Name, strings.Join(ids, ", "))
		}
	}
	return out, nil
}

func means(word string, it *vehicle.Item) bool {
	slug := vehicle.Slug(word)
	return slug == "all" || slug == strconv.Itoa(it.Number) || slug == it.ID || slug == vehicle.Slug(it.Name) ||
		it.Hand != vehicle.Alike && (slug == it.Hand.String()+"-"+it.ID || slug == it.Hand.String()+"-"+vehicle.Slug(it.Name))
}

func runCheckMesh(_ context.Context, args []string, out, _ io.Writer) error {
	f := flags("check-mesh", "FILE.stl...", "Says whether STL files, ours or others', are fit to cut from.", out)
	rest, err := parse(f, args, 1, 10000)
	if err != nil {
		return err
	}
	unfit := 0
	for _, name := range rest {
		says, sound, err := examined(name)
		if err != nil {
			return err
		}
		if !sound {
			unfit++
		}
		fmt.Fprint(out, says)
	}
	if unfit > 0 {
		return fmt.Errorf("%d of %d not fit to cut from", unfit, len(rest))
	}
	return nil
}

// examined says in words what one file holds and what is wrong with it.
func examined(name string) (says string, sound bool, err error) {
	file, err := os.Open(name)
	if err != nil {
		return "", false, misuse("%s cannot be read: %v", name, plain(err))
	}
	defer file.Close()
	m, err := mesh.ReadSTL(file)
	if err != nil {
		var faulty *mesh.FormatError
		if !errors.As(err, &faulty) {
			return "", false, fmt.Errorf("%s: %w", name, err)
		}
		return fmt.Sprintf("%s: not fit. %s; %s.\n", name, faulty.Found, faulty.Want), false, nil
	}
	r := mesh.Inspect(m)
	size := m.Bounds()
	long, wide, deep := size.Max.X-size.Min.X, size.Max.Y-size.Min.Y, size.Max.Z-size.Min.Z
	var b strings.Builder
	verdict := "closed and outward"
	if r.Err() != nil {
		verdict = "not fit. " + r.Err().Error()
	}
	fmt.Fprintf(&b, "%s: %s.\n    %d triangles, %d %s; taken as millimetres it measures %.1f x %.1f x %.1f mm, %.1f cm3.\n",
		name, verdict, len(m.Triangles), r.Pieces, skins(r.Pieces), long, wide, deep, float64(r.Volume)/1000)
	if most := max(long, wide, deep); most > 0 && most < 120 {
		fmt.Fprintf(&b, "    The largest size is %.1f: if that is inches, the part is %.0f mm long. Ask before cutting.\n", most.Millimetres(), most.Millimetres()*25.4)
	}
	return b.String(), r.Err() == nil, nil
}

func skins(n int) string {
	if n == 1 {
		return "skin"
	}
	return "skins"
}
