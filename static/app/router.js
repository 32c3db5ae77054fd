// Screens by address. Addresses live behind the hash, so that one page serves
// them all without a network.

/** The parts of the address: "#/job/7" gives ['job', '7']. */
export function route(hash = location.hash) {
  return hash
    .replace(/^#\/?/, '')
    .split('/')
    .filter(Boolean)
    .map((part) => {
      try {
        return decodeURIComponent(part);
      } catch {
        return part;
      }
    });
}

/** The address of a screen. */
export const address = (...parts) => `#/${parts.map(encodeURIComponent).join('/')}`;

/** Goes to a screen. */
export function go(...parts) {
  location.hash = address(...parts);
}
