package cli

// limitsInShort is predictLimits for the eye.
var limitsInShort = []string{
	"gaskets that harden or creep (5 to 20 % with time on soft ones, engineering estimate)",
	"embedding, parts that are not flat, bolts beyond yield, heat",
	"torque scatter, unless --scatter adds it",
	"no measured joint has been compared: on soft gaskets and raised faces take another 5 to 10 points",
}

// predictLimits are what the model leaves out, in full, for --json.
var predictLimits = []string{
	"gaskets that harden, stay compressed or creep (5 to 20 % with time on soft gaskets, engineering estimate)",
	"embedding, parts that are not flat, bolts beyond yield, heat, shear in thick parts, friction between the parts",
	"torque scatter, as listed under what is assumed, unless --scatter adds it; friction that changes from pass to pass",
	"measured joints: none has been compared; on soft gaskets and raised faces take another 5 to 10 points",
}
