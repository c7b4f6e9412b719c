package record

func prepareChild() {}
