import { t } from './catalogue.js';

/**
 * A number of bytes as it is read: two digits, since it is an estimate.
 *
 * @param {number} bytes
 */
export function size(bytes) {
  const [unit, exact] = bytes < 999e6 ? ['mb', bytes / 1e6] : ['gb', bytes / 1e9];
  const value = Math.max(exact, 0.1);
  return t(`keep.size.${unit}`, { value: Number(value.toPrecision(value < 100 ? 2 : 3)) });
}
