package overhaul

// layer is what covers or holds other parts of a machine: these come off after it.
type layer struct {
	over, under []string
	// unless is what of it may come off first, so that the rest can wait.
	unless []string
}

// Names of the trade, in the languages of the cards.
var (
	sumps  = []string{"sump", "oil pan", "ölwanne", "carter d huile", "carter inférieur", "cárter", "cárter de aceite"}
	shafts = []string{"camshaft", "camshaft cap", "camshaft bearing cap", "nockenwelle", "nockenwellendeckel", "nockenwellenlagerdeckel", "arbre à came", "árbol de leva"}
	heads  = []string{"cylinder head", "zylinderkopf", "culasse", "culata"}
	chains = []string{"timing chain", "timing belt", "steuerkette", "zahnriemen", "chaîne de distribution", "courroie de distribution", "cadena de distribución", "correa de distribución"}

	layers = []layer{
		{over: sumps, under: []string{
			"main bearing cap", "main cap", "rod cap", "rod bearing cap", "big end cap", "hauptlagerdeckel", "pleueldeckel", "pleuellagerdeckel",
			"chapeaux de palier", "chapeaux de bielle", "sombrerete de bancada", "sombrerete de biela",
			"strainer", "pickup", "oil pickup", "its strainer", "its pickup", "ölsieb", "ansaugsieb", "crépine", "colador",
		}},
		{over: []string{"cam cover", "camshaft cover", "valve cover", "rocker cover", "head cover", "ventildeckel", "zylinderkopfhaube", "ventilhaube", "couvre culasse", "cache culbuteur", "tapa de balancine"}, under: shafts},
		{over: []string{"timing cover", "chain cover", "belt cover", "steuergehäusedeckel", "kettenkasten", "carter de distribution", "tapa de distribución"}, under: chains},
		{over: chains, under: shafts, unless: []string{"chain", "belt", "sprocket", "tensioner", "kette", "riemen", "spanner", "kettenrad", "chaîne", "courroie", "tendeur", "pignon", "cadena", "correa", "tensor", "piñón"}},
		{over: shafts, under: heads},
		{over: []string{"main bearing cap", "main cap", "hauptlagerdeckel", "chapeaux de palier", "sombrerete de bancada"}, under: []string{"crankshaft", "kurbelwelle", "vilebrequin", "cigüeñal"}},
		{over: []string{"connecting rod", "pleuel", "bielle", "biela", "rod cap", "rod bearing cap", "big end cap", "pleueldeckel", "pleuellagerdeckel", "chapeaux de bielle", "sombrerete de biela"}, under: []string{"piston", "kolben", "pistón", "pistone"}},
	}
)
