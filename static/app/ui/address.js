// Screens by address. Addresses stand after the hash, so that one page serves
// them all without a network.

/** The parts of the address: "#/job/7" gives ['job', '7']. */
export function route(hash = location.hash) {
  return hash
    .replace(/^#\/?/, '')
    .split('/')
    .filter(Boolean)
    .map((piece) => {
      try {
        return decodeURIComponent(piece);
      } catch {
        return piece;
      }
    });
}

/**
 * The address of a screen.
 *
 * @param {...string} parts
 */
export const address = (...parts) => `#/${parts.map(encodeURIComponent).join('/')}`;

/**
 * Goes to a screen.
 *
 * @param {...string} parts
 */
export function go(...parts) {
  location.hash = address(...parts);
}
