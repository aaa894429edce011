/** WebAssembly as far as it is used here. Named because this room knows neither browser nor Node; every engine the app runs on has it. */
export interface WasmMemory {
  readonly buffer: ArrayBuffer;
}
interface Wasm<Exports> {
  readonly Memory: new (size: { initial: number }) => WasmMemory;
  readonly Module: new (bytes: Uint8Array<ArrayBuffer>) => object;
  readonly Instance: new (module: object, imports: object) => { readonly exports: Exports };
}

/** Undefined where there is none. `Exports`: what the modules that are made with it hand out, unchecked. */
export const webAssembly = <Exports>(): Wasm<Exports> | undefined => (globalThis as { WebAssembly?: Wasm<Exports> }).WebAssembly;
