// Screens by address. Addresses stand after the hash, so that one page serves
// them all without a network.

/**
 * The parts of the address: "#/job/7" gives ['job', '7']. What goes with it stands last,
 * as it is: "#/aid/burn?job=7" gives ['aid', 'burn', '?job=7'].
 */
export function route(hash = location.hash) {
  const [way, ...rest] = hash.replace(/^#\/?/, '').split('?');
  const parts = way
    .split('/')
    .filter(Boolean)
    .map((piece) => {
      try {
        return decodeURIComponent(piece);
      } catch {
        return piece;
      }
    });
  return rest.length ? [...parts, `?${rest.join('?')}`] : parts;
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
