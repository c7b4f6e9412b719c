package drafts

import (
	"slices"
	"strconv"

	"drawdown/patterns/edit"
	"drawdown/render/page/editpage"
)

// Keys that have a field of their own even where the file lacks them.
var (
	headKeys = []string{"title", "machine", "revision", "date", "units", "view", "mirror", "extends"}
	kindKeys = []string{"thread", "class", "length", "grip", "into", "engagement", "lubricant", "head", "nut", "washer", "hole", "reuse"}
)

// unknown stands for a value that nobody has given yet: the check reports it until
// it is typed.
const unknown = "?"

// sections returns the forms of a file.
func sections(content edit.Value) []editpage.Section {
	if content.Kind != edit.Map {
		return nil
	}
	head := editpage.Group{Fields: append(fields(content, nil, headKeys), fields(content, edit.Path{"tighten"}, []string{"source"})...)}
	all := []editpage.Section{
		{Key: "heading", Groups: []editpage.Group{head}},
		{Key: "layouts", Groups: layouts(content)},
		{Key: "kinds", Groups: kinds(content), Adds: []editpage.Add{{Key: "kind", Op: set(edit.Path{"kinds", freeKind(content)}, map[string]any{"thread": unknown})}}},
		{Key: "order", Groups: items(content, edit.Path{"tighten", "order"})},
		{Key: "stages", Groups: items(content, edit.Path{"tighten", "stages"}), Adds: stages(edit.Path{"tighten", "stages"})},
		{Key: "loosen", Groups: items(content, edit.Path{"loosen", "stages"}), Adds: []editpage.Add{
			insert("turn", edit.Path{"loosen", "stages"}, map[string]any{"turn": unknown}), insert("remove", edit.Path{"loosen", "stages"}, map[string]any{"remove": "true"}),
		}},
		{Key: "cautions", Groups: items(content, edit.Path{"cautions"}), Adds: []editpage.Add{insert("caution", edit.Path{"cautions"}, unknown)}},
		{Key: "clusters", Groups: items(content, edit.Path{"clusters"})},
		{Key: "outline", Groups: outline(content)},
		{Key: "features", Groups: items(content, edit.Path{"features"}), Adds: []editpage.Add{
			insert("bore", edit.Path{"features"}, map[string]any{"bore": []any{0, 0}, "diameter": 20}),
			insert("dowel", edit.Path{"features"}, map[string]any{"dowel": []any{0, 0}, "diameter": 8}),
			insert("label", edit.Path{"features"}, map[string]any{"label": "A", "at": []any{0, 0}}),
			insert("front", edit.Path{"features"}, map[string]any{"front": "left"}),
		}},
		{Key: "stations", Groups: items(content, edit.Path{"stations"}), Adds: []editpage.Add{insert("station", edit.Path{"stations"}, map[string]any{"id": "T1", "at": []any{0, 0}})}},
		{Key: "measure", Groups: items(content, edit.Path{"measure"})},
	}
	return slices.DeleteFunc(all, func(s editpage.Section) bool { return len(s.Groups) == 0 && len(s.Adds) == 0 })
}

func stages(path edit.Path) []editpage.Add {
	return []editpage.Add{
		insert("torque", path, map[string]any{"torque": unknown}), insert("angle", path, map[string]any{"angle": unknown}),
		insert("back off", path, map[string]any{"back off": unknown}), insert("wait", path, map[string]any{"wait": unknown}),
		insert("percent", path, map[string]any{"percent": unknown}),
	}
}

func insert(key string, path edit.Path, value any) editpage.Add {
	return editpage.Add{Key: key, Op: editpage.Op{"do": edit.Insert, "path": path, "value": value}}
}

func set(path edit.Path, value any) editpage.Op {
	return editpage.Op{"do": edit.Set, "path": path, "value": value}
}

func drop(path edit.Path) *editpage.Op { return &editpage.Op{"do": edit.Drop, "path": path} }

// fields returns the fields of the keys of a map, with those that it lacks.
func fields(content edit.Value, path edit.Path, keys []string) (all []editpage.Field) {
	for _, key := range keys {
		at := path.Then(key)
		one := editpage.Field{Key: key, Set: editpage.Op{"do": edit.Set, "path": at}}
		if v := content.At(at); v != nil {
			if v.Kind != edit.Scalar {
				continue
			}
			one.Value, one.Drop = v.Text, drop(at)
		}
		all = append(all, one)
	}
	return all
}

// leaves returns a field for each text below a path.
func leaves(content edit.Value, path edit.Path, key string) (all []editpage.Field) {
	v := content.At(path)
	if v == nil {
		return nil
	}
	if v.Kind == edit.Scalar {
		return []editpage.Field{{Key: key, Value: v.Text, Set: editpage.Op{"do": edit.Set, "path": path}, Drop: drop(path)}}
	}
	for i, child := range v.Of {
		switch {
		case v.Kind == edit.Map:
			all = append(all, leaves(content, path.Then(v.Keys[i]), v.Keys[i])...)
		case len(v.Of) == 2 && child.Kind == edit.Scalar && isNumber(child.Text):
			all = append(all, leaves(content, path.Item(i), key+" "+[]string{"x", "y"}[i])...)
		default:
			all = append(all, leaves(content, path.Item(i), key)...)
		}
	}
	return all
}

func isNumber(text string) bool {
	_, err := strconv.ParseFloat(text, 64)
	return err == nil
}

func kinds(content edit.Value) (all []editpage.Group) {
	v := content.At(edit.Path{"kinds"})
	if v == nil || v.Kind != edit.Map {
		return nil
	}
	for i, name := range v.Keys {
		path := edit.Path{"kinds", name}
		group := editpage.Group{Name: name, Fields: fields(content, path, kindKeys), Drop: drop(path)}
		for k, key := range v.Of[i].Keys {
			if !slices.Contains(kindKeys, key) || v.Of[i].Of[k].Kind != edit.Scalar {
				group.Fields = append(group.Fields, leaves(content, path.Then(key), key)...)
			}
		}
		all = append(all, group)
	}
	return all
}

func freeKind(content edit.Value) string {
	for n := 2; ; n++ {
		if name := "kind " + strconv.Itoa(n); content.At(edit.Path{"kinds", name}) == nil {
			return name
		}
	}
}

// layouts returns the grids, rows, circles and rectangles.
func layouts(content edit.Value) (all []editpage.Group) {
	list := content.At(edit.Path{"fasteners"})
	if list == nil {
		return nil
	}
	for i, item := range list.Of {
		if len(item.Keys) != 1 || item.Of[0].Kind != edit.Map {
			continue
		}
		path := edit.Path{"fasteners"}.Item(i)
		group := editpage.Group{Name: item.Keys[0], Fields: leaves(content, path, ""), Drop: drop(path)}
		if id := item.Of[0].At(edit.Path{"id"}); id != nil {
			group.Name += " " + id.Text
			group.Single = &editpage.Op{"do": edit.Single, "ids": []string{id.Text + "1"}}
		}
		all = append(all, group)
	}
	return all
}

// items returns the entries of a list, which can change places.
func items(content edit.Value, path edit.Path) (all []editpage.Group) {
	list := content.At(path)
	if list == nil || list.Kind != edit.List {
		return nil
	}
	move := func(from, to int) *editpage.Op {
		return &editpage.Op{"do": edit.Reorder, "path": path, "from": from, "to": to}
	}
	for i := range list.Of {
		at := path.Item(i)
		group := editpage.Group{Name: strconv.Itoa(i + 1), Fields: leaves(content, at, "text"), Drop: drop(at)}
		if i > 0 {
			group.Up = move(i, i-1)
		}
		if i+1 < len(list.Of) {
			group.Down = move(i, i+1)
		}
		all = append(all, group)
	}
	return all
}

// outline returns the points of the outline, or of its paths.
func outline(content edit.Value) (all []editpage.Group) {
	list := content.At(edit.Path{"outline"})
	if list == nil || len(list.Of) == 0 {
		return nil
	}
	if point := list.At(edit.Path{"0", "0"}); point == nil || point.Kind == edit.Scalar {
		return items(content, edit.Path{"outline"})
	}
	for i := range list.Of {
		all = append(all, items(content, edit.Path{"outline"}.Item(i))...)
	}
	return all
}
