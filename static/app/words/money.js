// How money and numbers of the core are printed: as the core prints figures, with a
// point before the decimals, no mark between thousands, and the unit behind. A comma is
// a point to half of those who read it. Nothing is worked out here.

import { verbatim } from './catalogue.js';

/** @import { BillAnswer, MinorUnits } from '../core/core.d.ts' */

/**
 * An amount in minor units, as the core gives it, with its currency.
 *
 * @param {MinorUnits | undefined} minor nothing is zero
 * @param {BillAnswer} bill that says which currency
 */
export const money = (minor = 0, { currency, digits = 0 }) =>
  verbatim(`${(minor / 10 ** digits).toFixed(digits)}\u00a0${currency}`);

/**
 * A plain number of the core, with its unit if it has one.
 *
 * @param {number | string} number
 * @param {string} [unit]
 */
export function amount(number, unit) {
  const digits = String(Number(Number(number).toFixed(3)));
  return unit ? verbatim(`${digits}\u00a0${unit}`) : digits;
}

/**
 * A share in per cent, such as a tax rate.
 *
 * @param {number} number
 */
export const percent = (number) => amount(number, '%');
