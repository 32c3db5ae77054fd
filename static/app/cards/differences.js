const most = 40; // further ones are left out

const isObject = (value) => typeof value === 'object' && value !== null;

/**
 * The members of a value by name; those of a list by their ids, or by what they are, the
 * second of a kind with its number.
 */
function members(value) {
  if (!Array.isArray(value)) return new Map(Object.entries(value ?? {}));
  const seen = new Map();
  return new Map(
    value.map((item, n) => {
      const name = item?.id ?? item?.kind ?? item?.at ?? item?.grade ?? String(n + 1);
      const nth = (seen.get(name) ?? 0) + 1;
      seen.set(name, nth);
      return [nth > 1 ? `${name} ${nth}` : name, item];
    }),
  );
}

/** A figure as one reads it, "2 L"; undefined for what is none. */
const shown = (value) =>
  isObject(value) && 'value' in value
    ? [[value.value, value.to].filter((v) => v !== undefined).join('–'), value.unit].join(' ')
    : undefined;

/** Where two cards differ: [{where: [name, …], values: [of one, of the other]}]. */
export function differences(one, other, where = []) {
  if (!isObject(one) && !isObject(other))
    return one === other ? [] : [{ where, values: [one, other] }];
  const texts = [shown(one), shown(other)];
  if (texts[0] !== texts[1]) return [{ where, values: texts }];
  const [a, b] = [members(one), members(other)];
  const list = [];
  for (const name of new Set([...a.keys(), ...b.keys()])) {
    list.push(...differences(a.get(name), b.get(name), [...where, name]));
    if (list.length >= most) break;
  }
  return list.slice(0, most);
}
