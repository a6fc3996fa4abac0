package delivery

import (
	"errors"
	"fmt"
	"io/fs"
	"os"
	"path/filepath"
	"slices"
)

// A ShelfError says why a delivery could not be put in its place.
type ShelfError struct {
	Folder string
	Found  string
	Want   string
	Err    error
}

func (e *ShelfError) Error() string {
	s := fmt.Sprintf("%s: %s; %s", e.Folder, e.Found, e.Want)
	if e.Err != nil {
		s += fmt.Sprintf(" (%v)", e.Err)
	}
	return s
}

func (e *ShelfError) Unwrap() error { return e.Err }

// A shelf is a kind of folder that this program writes: the file by which one is
// known, and so may be replaced, and what else is in it.
type shelf struct {
	mark string
	ours []string
	what string
}

func delivered() shelf {
	return shelf{"README.txt", []string{"cnc", "joiner", "yard", "smith", "record"}, "a delivery"}
}

func bagged() shelf {
	return shelf{"bagit.txt", []string{"bag-info.txt", "manifest-sha256.txt", "tagmanifest-sha256.txt", "data"}, "an archive"}
}

// PutBag writes the files of an archive into a folder, as Put does a delivery's.
func PutBag(folder string, files []File) error { return bagged().put(folder, files) }

// Put writes the files of a delivery into a folder. All of them are written
// beside it first; only then does the new folder take the old one's place. A
// folder that holds anything but an earlier delivery is never touched.
func Put(folder string, files []File) error { return delivered().put(folder, files) }

func (s shelf) put(folder string, files []File) (err error) {
	folder = filepath.Clean(folder)
	if err := s.replaceable(folder); err != nil {
		return err
	}
	parent := filepath.Dir(folder)
	if err := os.MkdirAll(parent, 0o755); err != nil {
		return &ShelfError{folder, "the folder above it cannot be made", "choose another with --out", err}
	}
	fresh, err := os.MkdirTemp(parent, "."+filepath.Base(folder)+"-new-")
	if err != nil {
		return &ShelfError{folder, "nothing can be written beside it", "choose another place with --out", err}
	}
	defer func() {
		if err != nil {
			err = errors.Join(err, os.RemoveAll(fresh))
		}
	}()
	for _, f := range files {
		path := filepath.Join(fresh, filepath.FromSlash(f.Path))
		if err := os.MkdirAll(filepath.Dir(path), 0o755); err != nil {
			return &ShelfError{folder, "a folder in it cannot be made", "see what is in the way", err}
		}
		if err := os.WriteFile(path, f.Data, 0o644); err != nil {
			return &ShelfError{folder, "the disk does not take " + f.Path, "see whether it is full", err}
		}
	}
	if err := os.Chmod(fresh, 0o755); err != nil {
		return &ShelfError{folder, "it cannot be opened to others", "see who owns the folder above", err}
	}
	return exchange(folder, fresh)
}

// PutFile writes one file, whole or not at all.
func PutFile(name string, data []byte) error {
	folder := filepath.Dir(name)
	if err := os.MkdirAll(folder, 0o755); err != nil {
		return &ShelfError{folder, "the folder cannot be made", "choose another with --out", err}
	}
	f, err := os.CreateTemp(folder, ".new-*")
	if err != nil {
		return &ShelfError{folder, "nothing can be written there", "choose another with --out", err}
	}
	_, err = f.Write(data)
	err = errors.Join(err, f.Close(), os.Chmod(f.Name(), 0o644))
	if err == nil {
		err = os.Rename(f.Name(), name)
	}
	if err != nil {
		return errors.Join(&ShelfError{folder, "the disk does not take " + filepath.Base(name), "see whether it is full", err}, os.Remove(f.Name()))
	}
	return nil
}

// exchange puts fresh in folder's place; the old one goes only when the new one stands.
func exchange(folder, fresh string) error {
	if _, err := os.Lstat(folder); errors.Is(err, fs.ErrNotExist) {
		if err := os.Rename(fresh, folder); err != nil {
			return &ShelfError{folder, "the new files cannot be moved there", "choose another with --out", err}
		}
		return nil
	}
	old := fresh + "-old"
	if err := os.Rename(folder, old); err != nil {
		return &ShelfError{folder, "what stood there cannot be moved aside", "close what has it open", err}
	}
	if err := os.Rename(fresh, folder); err != nil {
		back := os.Rename(old, folder)
		return errors.Join(&ShelfError{folder, "the new files cannot be moved there", "choose another with --out", err}, back)
	}
	return os.RemoveAll(old)
}

// replaceable reports an error where a folder holds something that is not ours.
func (s shelf) replaceable(folder string) error {
	info, err := os.Stat(folder)
	switch {
	case errors.Is(err, fs.ErrNotExist):
		return nil
	case err != nil:
		return &ShelfError{folder, "it cannot be looked into", "choose another with --out", err}
	case !info.IsDir():
		return &ShelfError{folder, "a file of that name is there", "choose another with --out", nil}
	}
	entries, err := os.ReadDir(folder)
	if err != nil {
		return &ShelfError{folder, "it cannot be looked into", "choose another with --out", err}
	}
	if len(entries) == 0 {
		return nil
	}
	found := false
	for _, e := range entries {
		if e.Name() != s.mark && !slices.Contains(s.ours, e.Name()) {
			return &ShelfError{folder, "it holds " + e.Name() + ", which is no part of " + s.what, "choose an empty folder with --out", nil}
		}
		found = found || e.Name() == s.mark
	}
	if !found {
		return &ShelfError{folder, "it is not empty, and not " + s.what + " made earlier", "choose an empty folder with --out", nil}
	}
	return nil
}
