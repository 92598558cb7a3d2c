// Of what lzma1 exports the one thing used; its own types are its sources, which are not ours to check.
export function decompress(packed: Uint8Array): Uint8Array<ArrayBuffer>;
