// What the page and its workers say to each other: the engine unpacked, then a question at a time, in
// JSON both ways.
export type ToWorker = { packed: string } | { module: WebAssembly.Module } | { id: number; question: string };
export type FromWorker = { module: WebAssembly.Module } | { fault: string } | { id: number; answer: string } | { id: number; fault: string };
