import { t } from './catalogue.js';

/**
 * A number of bytes as it is read: two digits, since it is an estimate.
 *
 * @param {number} bytes
 */
export function size(bytes) {
  const [unit, value] = bytes < 999e6 ? ['mb', bytes / 1e6] : ['gb', bytes / 1e9];
  const shown = Math.max(value, 0.1).toLocaleString(document.documentElement.lang, {
    maximumSignificantDigits: value < 100 ? 2 : 3,
  });
  return t(`keep.size.${unit}`, { value: shown });
}
