// How money and numbers of the core are printed: in the phone's own way of
// writing them. Nothing is worked out here.

/** An amount in minor units, as the core gives it, with its currency. */
export const money = (minor = 0, { currency, digits = 0 }) =>
  new Intl.NumberFormat(undefined, {
    style: 'currency',
    currency,
    minimumFractionDigits: digits,
    maximumFractionDigits: digits,
  }).format(minor / 10 ** digits);

/** A plain number of the core, with its unit if it has one. */
export function amount(number, unit) {
  const digits = new Intl.NumberFormat(undefined, { maximumFractionDigits: 3 }).format(number);
  return unit ? `${digits}\u00a0${unit}` : digits;
}

/** A share, such as a tax rate. */
export const percent = (number) => amount(number, '%');
