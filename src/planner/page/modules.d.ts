// What comes without types of its own.
declare module 'slabtide-engine' {
  // As Emscripten exports them, of src/planner/exports.h.
  export interface Exports {
    HEAPU8: Uint8Array;
    _slabtide_request(bytes: number): number;
    _slabtide_answer(): number;
    _slabtide_answer_text(): number;
  }
  interface Options {
    instantiateWasm(imports: WebAssembly.Imports, receive: (instance: WebAssembly.Instance, module: WebAssembly.Module) => void): object;
  }
  export default function engine(options: Options): Promise<Exports>;
}
