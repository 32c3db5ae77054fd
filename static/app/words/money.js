// How money and numbers of the core are printed: in the phone's own way of
// writing them. Nothing is worked out here.

/** @import { BillAnswer, MinorUnits } from '../core/core.d.ts' */

/**
 * An amount in minor units, as the core gives it, with its currency.
 *
 * @param {MinorUnits | undefined} minor nothing is zero
 * @param {BillAnswer} bill that says which currency
 */
export const money = (minor = 0, { currency, digits = 0 }) =>
  new Intl.NumberFormat(undefined, {
    style: 'currency',
    currency,
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
  }).format(minor / 10 ** digits);

/**
 * A plain number of the core, with its unit if it has one.
 *
 * @param {number} number
 * @param {string} [unit]
 */
export function amount(number, unit) {
  const digits = new Intl.NumberFormat(undefined, { maximumFractionDigits: 3 }).format(number);
  return unit ? `${digits}\u00a0${unit}` : digits;
}

/**
 * A share in per cent, such as a tax rate.
 *
 * @param {number} number
 */
export const percent = (number) => amount(number, '%');
