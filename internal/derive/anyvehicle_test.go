package derive

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"lostwood/internal/survey"
)

// anyVehicle draws a vehicle: two to four beds, one to three pairs of reaches with a
// strap along each, three to six cross bars with straps under them, and up to four
// pairs of slats. Its survey is complete, with sizes as drawn.
func anyVehicle(t *testing.T, r *rand.Rand) *survey.Survey {
	t.Helper()
	text := drawVehicle(r)
	s, err := survey.Read("any.toml", []byte(text))
	require.NoError(t, err, "%s", text)
	return s
}

// A drawing is a vehicle while it is drawn, in inches.
type drawing struct {
	r                              *rand.Rand
	irons, parts, fastenings, iron strings.Builder
	measured, like                 strings.Builder
}

func (d *drawing) between(lo, hi float64) float64 { return lo + (hi-lo)*d.r.Float64() }

func drawVehicle(r *rand.Rand) string {
	d := &drawing{r: r}
	beds, reaches, bars, slats := 2+r.IntN(3), 1+r.IntN(3), 3+r.IntN(4), r.IntN(5)
	length := d.between(70, 130)
	bedLong := d.between(30, 44)
	var out []float64 // of each reach, from the near end of a bed
	for k := range reaches {
		out = append(out, 3+float64(k)*4+d.between(0, 2))
	}
	for b := range beds {
		d.bed(b, bedLong, out)
	}
	var at []float64 // of each bed, from the fore end of the reaches
	for b := range beds {
		at = append(at, 5+(length-10)*float64(b)/float64(beds-1))
	}
	for k := range reaches {
		d.reach(k, beds, length, at)
	}
	d.bars(bars, slats, length, bedLong)
	return fmt.Sprintf(`[vehicle]
name = "Any"
issue = "A"
date = 2026-10-30
unit = "in"
[wood]
timber = "white oak"
bought = 15
service = 12
[datum]
zero = ["bed-a.mid-x = 0", "bed-a.under = 20"]
[iron]
%s[part]
%s%s[evidence]
iron = [%s]
measured = [%s]
like = [%s]
`, d.irons.String(), d.parts.String(), d.fastenings.String(), listOf(d.iron), listOf(d.measured), listOf(d.like))
}

func listOf(b strings.Builder) string { return strings.TrimSuffix(b.String(), ", ") }

func letter(k int) string { return string(rune('a' + k)) }

// bed draws a bed with a plate under it that has a hole for each reach, near and off.
func (d *drawing) bed(b int, long float64, out []float64) {
	var holes []string
	for _, o := range out {
		holes = append(holes, fmt.Sprintf(`"%.4f"`, o))
	}
	for k := range out {
		holes = append(holes, fmt.Sprintf(`"%.4f"`, long-out[len(out)-1-k]))
	}
	fmt.Fprintf(&d.irons, "plate-%s = { kind = \"plate\", runs = \"across\", thick = \"0.25\", wide = \"3\", long = \"%.4f\", holes = [%s] }\n", letter(b), long, strings.Join(holes, ", "))
	fmt.Fprintf(&d.parts, "bed-%s = { kind = \"sand board\", runs = \"across\" }\n", letter(b))
	fmt.Fprintf(&d.iron, "\"bed-%[1]s.long = plate-%[1]s.long\", \"bed-%[1]s.wide = plate-%[1]s.wide\", ", letter(b))
}

// reach draws a pair of reaches over the beds, with a strap on each.
func (d *drawing) reach(k, beds int, long float64, at []float64) {
	var holes []string
	for _, x := range at {
		holes = append(holes, fmt.Sprintf(`"%.4f"`, x+d.between(-0.5, 0.5)))
	}
	off := ""
	if d.r.IntN(2) == 0 {
		off = fmt.Sprintf(", off = { holes = [%s] }", strings.Join(holes, ", "))
	}
	n := letter(k)
	fmt.Fprintf(&d.irons, "strap-%s = { kind = \"strap\", runs = \"along\", pair = true, thick = \"0.1875\", wide = \"2\", long = \"%.4f\", holes = [%s]%s }\n", n, long, strings.Join(holes, ", "), off)
	fmt.Fprintf(&d.parts, "reach-%s = { kind = \"sill\", runs = \"along\", pair = true }\n", n)
	fmt.Fprintf(&d.iron, "\"reach-%[1]s.long = strap-%[1]s.long\", \"reach-%[1]s.wide = strap-%[1]s.wide\", ", n)
	deep := d.between(2, 4)
	for b := range beds {
		grip := 0.1875 + deep + 3 + 0.25
		fmt.Fprintf(&d.fastenings, "[[fastening]]\nbolt = \"0.5\"\ndown = [\"strap-%s#%d\", \"reach-%s\", \"bed-%s\", \"plate-%s#%d\"]\ngrip = [\"%.4f\", \"%.4f\"]\n",
			n, b+1, n, letter(b), letter(b), k+1, grip, grip)
	}
	fmt.Fprintf(&d.measured, "\"bed-%s.deep = 3 ± 0.0625\", ", letter(k%beds))
}

// bars draws cross bars on the first reaches, straps under them, and slats on them.
func (d *drawing) bars(bars, slats int, length, bedLong float64) {
	var spread, under, rows, pairs []string
	for j := range bars {
		spread = append(spread, fmt.Sprintf(`"%.4f"`, 8+(length-16)*float64(j)/float64(bars-1)))
		rows = append(rows, fmt.Sprint(j+1))
		pairs = append(pairs, `["5.5", "5.5"]`)
	}
	fmt.Fprintf(&d.irons, "long-strap = { kind = \"strap\", runs = \"along\", pair = true, thick = \"0.125\", wide = \"1.5\", long = \"%.4f\", holes = [%s] }\n", length-1, strings.Join(spread, ", "))
	fmt.Fprintf(&d.parts, "bar = { kind = \"cross bar\", runs = \"across\", number = %d }\n", bars)
	fmt.Fprintf(&d.fastenings, "[[fastening]]\nbolt = \"0.375\"\ndown = [\"bar\", \"reach-a\", \"long-strap#%s\"]\ngrip = [%s]\n", strings.Join(rows, ","), strings.Join(pairs, ", "))
	fmt.Fprintf(&d.like, "\"bar.long = %.4f ± 0.25\", ", bedLong)
	fmt.Fprint(&d.measured, `"bar.wide = 2.5 ± 0.03125", `)
	if slats == 0 {
		return
	}
	for k := range slats {
		under = append(under, fmt.Sprintf(`"%.4f"`, 2+4*float64(k)))
	}
	for k := range slats {
		under = append(under, fmt.Sprintf(`"%.4f"`, bedLong-2-4*float64(slats-1-k)))
	}
	fmt.Fprintf(&d.irons, "bar-strap = { kind = \"strap\", runs = \"across\", number = %d, thick = \"0.125\", wide = \"1.5\", long = \"%.4f\", holes = [%s] }\n", bars, bedLong, strings.Join(under, ", "))
	for k := range slats {
		n := letter(k)
		fmt.Fprintf(&d.parts, "slat-%s = { kind = \"slat\", runs = \"along\", pair = true }\n", n)
		fmt.Fprintf(&d.fastenings, "[[fastening]]\nbolt = \"0.25\"\ndown = [\"slat-%s\", \"bar\", \"bar-strap#%d\"]\ngrip = [%s]\n", n, k+1,
			strings.ReplaceAll(strings.Join(pairs, ", "), "5.5", "3.2"))
		fmt.Fprintf(&d.like, "\"slat-%s.long = %.4f ± 0.25\", \"slat-%s.wide = 3.5 ± 0.25\", ", n, length, n)
	}
}
