// What the build puts into the page, and what a browser may have that the checker
// doesn't know of.

/** Where each file of this version is: name in the static folder -> URL. */
declare const __FILES__: { [name: string]: string };
/** The languages that this version can speak, the default first. */
declare const __LANGUAGES__: { tag: string; name: string; dir: 'ltr' | 'rtl' }[];
/** The version, in the service worker. */
declare const __VERSION__: string;
/** All files that the service worker keeps: the path of each, and the SHA-256 of its bytes in hex. */
declare const __PRECACHE__: [path: string, sum: string][];

/** The compiler's own glue, which declares Go. */
declare module 'wasm_exec.js';
declare class Go {
  env: { [name: string]: string };
  importObject: WebAssembly.Imports;
  run(instance: WebAssembly.Instance): Promise<void>;
}

/** Shape Detection API, https://wicg.github.io/shape-detection-api/ */
declare class BarcodeDetector {
  static getSupportedFormats(): Promise<string[]>;
  constructor(options: { formats: string[] });
  detect(from: ImageBitmapSource): Promise<{ rawValue: string }[]>;
}
