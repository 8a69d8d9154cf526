package otherrender

type wireColor struct {
	name string
	hex  uint32
}

var wireColors = []wireColor{{"red", 0xc01c1c}, {"black", 0x1a1a1c}, {"white", 0xe8e8e2}, {"green", 0x1f8a3c}, {"yellow", 0xe0c81c}, {"blue", 0x2050b8}, {"orange", 0xe0701c}, {"brown", 0x6a4024}, {"purple", 0x7a3a98}, {"gray", 0x888a8c}}
