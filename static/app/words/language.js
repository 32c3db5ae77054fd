/* global __LANGUAGES__ */

/**
 * The languages that this version of the page can speak, {tag, name, dir}, the
 * default first. The build writes them into the bundle; without a build there are
 * none.
 *
 * @typedef {{ tag: string, name: string, dir: 'ltr' | 'rtl' }} Language
 * @type {Language[]}
 */
export const languages = typeof __LANGUAGES__ === 'undefined' ? [] : __LANGUAGES__;

/**
 * The language for a list of wishes, the dearest first: the first that can be
 * spoken, else the default. "de-AT" is content with "de" (RFC 4647, lookup).
 *
 * @param {unknown[]} wishes
 * @param {Language[]} [spoken]
 */
export function languageFor(wishes, spoken = languages) {
  for (const wish of wishes)
    for (let tag = String(wish); tag; tag = tag.slice(0, Math.max(tag.lastIndexOf('-'), 0))) {
      const found = spoken.find((language) => language.tag.toLowerCase() === tag.toLowerCase());
      if (found) return found;
    }
  return spoken[0];
}
