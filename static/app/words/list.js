/**
 * Names in a sentence, in the order in which people of this language look for them:
 * "Dutch, English and German".
 *
 * @param {string[]} names
 */
export function listText(names) {
  const language = document.documentElement.lang;
  const sorted = [...names].sort(new Intl.Collator(language).compare);
  return new Intl.ListFormat(language, { type: 'conjunction' }).format(sorted);
}
