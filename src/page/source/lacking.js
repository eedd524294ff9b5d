// What the page needs of a browser.

/** Smallest modules with an exception and with a vector, which a browser takes or refuses. */
const head = [0, 97, 115, 109, 1, 0, 0, 0];
const exceptions = [1, 4, 1, 96, 0, 0, 3, 2, 1, 0, 10, 8, 1, 6, 0, 6, 64, 25, 11, 11];
const vectors = [1, 5, 1, 96, 0, 1, 123, 3, 2, 1, 0, 10, 10, 1, 8, 0, 65, 0, 253, 15, 253, 98, 11];

function takes(module) {
  try {
    return WebAssembly.validate(new Uint8Array([...head, ...module]));
  } catch {
    return false;
  }
}

/** Names of what this browser lacks. */
export function lacking() {
  const needed = [
    ['WebAssembly', typeof WebAssembly === 'object'],
    ['exceptions of WebAssembly', takes(exceptions)],
    ['vectors of WebAssembly (SIMD)', takes(vectors)],
    ['DecompressionStream', typeof DecompressionStream === 'function'],
    ['workers', typeof Worker === 'function'],
  ];
  return needed.filter(([, there]) => !there).map(([name]) => name);
}
