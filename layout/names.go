package layout

import (
	"fmt"
	"regexp"
	"strconv"
	"strings"
)

func sheetName(row, column int) string { return fmt.Sprintf("R%dC%d", row, column) }

// namePattern takes a sheet (R2C3), a row (R2) or a column (C4).
var namePattern = regexp.MustCompile(`^(?:R([0-9]{1,6}))?(?:C([0-9]{1,6}))?$`)

// Select returns the sheets that the names call for, each once, in pasting order: a sheet (R2C3), a row (R2),
// a column (C4), or all. A name that fits no sheet is an error.
func (p Plan) Select(names []string) ([]Sheet, error) {
	wanted := make([]bool, len(p.Sheets))
	for _, name := range names {
		row, column := 0, 0
		upper := strings.ToUpper(strings.TrimSpace(name))
		if upper != "ALL" {
			m := namePattern.FindStringSubmatch(upper)
			if m == nil || upper == "" {
				return nil, fmt.Errorf("%q is not a sheet\nhint: take names such as R2C3, rows such as R2 or columns such as C4, "+
					"with spaces between them, or all", name)
			}
			row, _ = strconv.Atoi(m[1]) // an empty match stays 0: any
			column, _ = strconv.Atoi(m[2])
			if (m[1] != "" && (row < 1 || row > p.Backdrop.Rows)) ||
				(m[2] != "" && (column < 1 || column > p.Backdrop.Columns)) {
				return nil, fmt.Errorf("there is no %s\nhint: this backdrop has rows R1 to R%d and columns C1 to C%d", upper,
					p.Backdrop.Rows, p.Backdrop.Columns)
			}
		}
		for i, s := range p.Sheets {
			if (row == 0 || row == s.Row) && (column == 0 || column == s.Column) {
				wanted[i] = true
			}
		}
	}
	var chosen []Sheet
	for i, s := range p.Sheets {
		if wanted[i] {
			chosen = append(chosen, s)
		}
	}
	return chosen, nil
}
