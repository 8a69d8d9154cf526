package core_test

import (
	"encoding/json"
	"go/ast"
	"go/importer"
	"go/parser"
	"go/token"
	"go/types"
	"io"
	"os"
	"os/exec"
	"path/filepath"
	"slices"
	"strings"
	"testing"

	"readback/core/lab/metric"
)

// pkg is a package as go list tells of it.
type pkg struct {
	ImportPath, Name, Dir, Export      string
	Standard                           bool
	GoFiles, TestGoFiles, XTestGoFiles []string
}

// product tells whether a package is shipped and has a door for other packages: no rig, no command, no binding for another language.
func (p *pkg) product() bool {
	return strings.HasPrefix(p.ImportPath, "readback/") && p.Name != "main" && !strings.Contains(p.ImportPath, "/lab/") &&
		p.ImportPath != "readback/mobile"
}

// house is what the packages of this module declare and what of it they use of one another.
type house struct {
	names map[string]token.Position  // "package.Name", exported and declared at the top of a product package
	used  map[string]bool            // named in another package, or in an Example
	refs  map[string][]string        // exported names in the type of a name: who uses the name needs them
	reads map[string]map[string]bool // "package.Type.Field" → the packages that read or write it
}

func key(o types.Object) string {
	if o == nil || o.Pkg() == nil {
		return ""
	}
	return o.Pkg().Path() + "." + o.Name()
}

// inType calls f for every named type that a type is made of, exported methods and fields included.
func inType(t types.Type, deep bool, seen map[types.Type]bool, f func(*types.TypeName)) {
	if seen[t] {
		return
	}
	seen[t] = true
	walk := func(t types.Type) { inType(t, false, seen, f) }
	tuple := func(tu *types.Tuple) {
		for i := range tu.Len() {
			walk(tu.At(i).Type())
		}
	}
	switch t := t.(type) {
	case *types.Alias:
		f(t.Obj())
		walk(types.Unalias(t))
	case *types.Named:
		f(t.Obj())
		for i := range t.TypeArgs().Len() {
			walk(t.TypeArgs().At(i))
		}
		if !deep {
			return
		}
		walk(t.Underlying())
		for i := range t.NumMethods() {
			if m := t.Method(i); m.Exported() {
				walk(m.Type())
			}
		}
	case *types.Pointer:
		walk(t.Elem())
	case *types.Slice:
		walk(t.Elem())
	case *types.Array:
		walk(t.Elem())
	case *types.Chan:
		walk(t.Elem())
	case *types.Map:
		walk(t.Key())
		walk(t.Elem())
	case *types.Signature:
		tuple(t.Params())
		tuple(t.Results())
	case *types.Interface:
		for i := range t.NumMethods() {
			walk(t.Method(i).Type())
		}
	case *types.Struct:
		for i := range t.NumFields() {
			if t.Field(i).Exported() {
				walk(t.Field(i).Type())
			}
		}
	}
}

// survey type-checks every package of the module.
func survey(t *testing.T) *house {
	t.Helper()
	cmd := exec.Command("go", "list", "-export", "-deps", "-test", "-json=ImportPath,Name,Dir,Export,Standard,GoFiles,TestGoFiles,XTestGoFiles", "./...")
	cmd.Dir = ".."
	cmd.Stderr = os.Stderr
	out, err := cmd.Output()
	if err != nil {
		t.Fatalf("go list: %v", err)
	}
	export := map[string]string{}
	var own []pkg
	for d := json.NewDecoder(strings.NewReader(string(out))); ; {
		var p pkg
		if err := d.Decode(&p); err == io.EOF {
			break
		} else if err != nil {
			t.Fatal(err)
		}
		if strings.Contains(p.ImportPath, " [") || strings.HasSuffix(p.ImportPath, ".test") {
			continue
		}
		export[p.ImportPath] = p.Export
		if strings.HasPrefix(p.ImportPath+"/", "readback/") {
			own = append(own, p)
		}
	}
	fset := token.NewFileSet()
	imp := importer.ForCompiler(fset, "gc", func(path string) (io.ReadCloser, error) { return os.Open(export[path]) })
	h := &house{names: map[string]token.Position{}, used: map[string]bool{}, refs: map[string][]string{}, reads: map[string]map[string]bool{}}
	check := func(p *pkg, path string, names []string) ([]*ast.File, *types.Info, *types.Package) {
		var files []*ast.File
		for _, n := range names {
			f, err := parser.ParseFile(fset, filepath.Join(p.Dir, n), nil, parser.SkipObjectResolution)
			if err != nil {
				t.Fatal(err)
			}
			files = append(files, f)
		}
		info := &types.Info{Uses: map[*ast.Ident]types.Object{}, Selections: map[*ast.SelectorExpr]*types.Selection{}, Types: map[ast.Expr]types.TypeAndValue{}}
		conf := types.Config{Importer: imp, Error: func(error) {}} // an Example may need what only tests of its package declare
		tp, _ := conf.Check(path, fset, files, info)
		return files, info, tp
	}
	note := func(path string, files []*ast.File, info *types.Info, only func(ast.Node) bool) {
		for _, f := range files {
			ast.Inspect(f, func(n ast.Node) bool {
				if only != nil {
					if d, ok := n.(*ast.FuncDecl); ok && !only(d) {
						return false
					}
				}
				switch n := n.(type) {
				case *ast.Ident:
					if o := info.Uses[n]; o != nil && o.Pkg() != nil && o.Pkg().Path() != path && o.Parent() == o.Pkg().Scope() {
						h.used[key(o)] = true
					}
				case *ast.SelectorExpr:
					s := info.Selections[n]
					if s == nil || s.Obj().Pkg() == nil {
						return true
					}
					inType(s.Recv(), false, map[types.Type]bool{}, func(tn *types.TypeName) {
						if tn.Pkg() != nil && tn.Pkg().Path() != path {
							h.used[key(tn)] = true
						}
						if s.Kind() == types.FieldVal {
							k := key(tn) + "." + s.Obj().Name()
							if h.reads[k] == nil {
								h.reads[k] = map[string]bool{}
							}
							h.reads[k][path] = true
						}
					})
				}
				return true
			})
		}
	}
	for i := range own {
		p := &own[i]
		files, info, tp := check(p, p.ImportPath, p.GoFiles)
		note(p.ImportPath, files, info, nil)
		if p.product() {
			for _, name := range tp.Scope().Names() {
				o := tp.Scope().Lookup(name)
				if !o.Exported() {
					continue
				}
				h.names[key(o)] = fset.Position(o.Pos())
				inType(o.Type(), true, map[types.Type]bool{}, func(tn *types.TypeName) {
					if tn.Exported() && key(tn) != key(o) {
						h.refs[key(o)] = append(h.refs[key(o)], key(tn))
					}
				})
			}
		}
		if len(p.XTestGoFiles) > 0 {
			files, info, _ := check(p, p.ImportPath+"_test", p.XTestGoFiles)
			note(p.ImportPath+"_test", files, info, func(n ast.Node) bool {
				d, ok := n.(*ast.FuncDecl)
				return !ok || d.Recv == nil && strings.HasPrefix(d.Name.Name, "Example")
			})
		}
	}
	// Who uses a name needs the types in it.
	var need func(k string)
	done := map[string]bool{}
	need = func(k string) {
		if done[k] {
			return
		}
		done[k], h.used[k] = true, true
		for _, r := range h.refs[k] {
			need(r)
		}
	}
	for k := range h.used {
		need(k)
	}
	return h
}

// unused lists the exported names of product packages that no other package and no Example uses.
func (h *house) unused() (out []string) {
	for k, at := range h.names {
		if !h.used[k] {
			out = append(out, strings.TrimPrefix(k, "readback/")+"  "+filepath.Base(at.Filename))
		}
	}
	slices.Sort(out)
	return out
}

// most is the share, in percent, that must not grow. The aim is 15, and the figure says whether it is met.
const most = 19

// TestHouse holds the share of exported names that nobody outside of their package uses.
func TestHouse(t *testing.T) {
	if testing.Short() {
		t.Skip("type-checks the whole module")
	}
	h := survey(t)
	un := h.unused()
	pct := 100 * float64(len(un)) / float64(len(h.names))
	t.Logf("%d of %d exported names are used by no other package: %.1f %%\n%s", len(un), len(h.names), pct, strings.Join(un, "\n"))
	if len(h.names) < 400 {
		t.Errorf("%d exported names were found", len(h.names))
	}
	if pct > most {
		t.Errorf("%.1f %% of the exported names are used by no other package, which is worse than %d", pct, most)
	}
	h.fieldsRead(t)
}

// unread are the fields that are there for whoever reads the file.
var unread = map[string]string{
	"Mode.ID":     "the label of its block; Full is what is used",
	"Mode.Name":   "what its writer calls the fault, in words; the user hears of parts and repairs",
	"Control.ID":  "the label of its block",
	"Lamp.Source": "where it is known from what the light means",
}

// fieldsRead refuses fields of an equipment file that nothing but their reader knows: who writes such a file must not believe in them.
func (h *house) fieldsRead(t *testing.T) {
	t.Helper()
	n := 0
	for _, typ := range []string{"Model", "Place", "Part", "Output", "Input", "Mode", "Signal", "Control", "Step", "Point", "Check", "Option",
		"Repair", "SwapStep", "PlateField", "Lamp", "StopLine", "Caution", "Band"} {
		for _, f := range h.fields(t, "readback/core/appliance", typ) {
			n++
			read := unread[typ+"."+f] != ""
			for by := range h.reads["readback/core/appliance."+typ+"."+f] {
				read = read || by != "readback/flows" && !strings.Contains(by, "/lab/")
			}
			if !read {
				t.Errorf("appliance.%s.%s is read from equipment files and used by nothing", typ, f)
			}
		}
	}
	if n < 100 {
		t.Errorf("%d fields were looked at", n)
	}
}

// fields are the exported fields of a struct, none when there is no such type.
func (h *house) fields(t *testing.T, path, typ string) (out []string) {
	t.Helper()
	at, ok := h.names[path+"."+typ]
	if !ok {
		t.Errorf("no type %s.%s", path, typ)
		return nil
	}
	f, err := parser.ParseFile(token.NewFileSet(), at.Filename, nil, parser.SkipObjectResolution)
	if err != nil {
		t.Fatal(err)
	}
	ast.Inspect(f, func(n ast.Node) bool {
		if ts, ok := n.(*ast.TypeSpec); ok && ts.Name.Name == typ {
			if st, ok := ts.Type.(*ast.StructType); ok {
				for _, fl := range st.Fields.List {
					for _, id := range fl.Names {
						if id.IsExported() {
							out = append(out, id.Name)
						}
					}
				}
			}
			return false
		}
		return true
	})
	return out
}

func TestFigures(t *testing.T) {
	metric.Run(t, func(add metric.Adder) {
		h := survey(t)
		add("house.unused_exports_pct", 100*float64(len(h.unused()))/float64(len(h.names)), "%", "<= 15", len(h.names))
	})
}
