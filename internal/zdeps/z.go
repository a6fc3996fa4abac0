package zdeps

import (
	_ "codeberg.org/go-pdf/fpdf"
	_ "github.com/deadsy/sdfx/render"
	_ "github.com/deadsy/sdfx/sdf"
	_ "github.com/jedib0t/go-pretty/v6/table"
	_ "github.com/pelletier/go-toml/v2"
	_ "github.com/pelletier/go-toml/v2/unstable"
	_ "github.com/pdfcpu/pdfcpu/pkg/api"
	_ "github.com/rogpeppe/go-internal/testscript"
	_ "github.com/spf13/pflag"
	_ "github.com/stretchr/testify/assert"
	_ "github.com/stretchr/testify/require"
	_ "github.com/vbauerster/mpb/v8"
	_ "golang.org/x/image/font/gofont/goregular"
	_ "golang.org/x/term"
	_ "gonum.org/v1/gonum/mat"
	_ "gonum.org/v1/gonum/stat/distuv"
	_ "github.com/yofu/dxf"
	_ "pgregory.net/rapid"
)
