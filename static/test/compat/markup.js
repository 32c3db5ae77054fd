// Which features of the data a text of HTML uses, with the SVG in it: a page, or a template
// in a script, in which {} stands for what is put in.
import { Parser } from 'htmlparser2';
import { checkEvent } from './events.js';
import { membersByName } from './members.js';
import { checkDeclarations, checkMedia } from './style.js';
import { lookUp } from './support.js';

/** Reports the elements and attributes of a text of HTML. */
export function checkMarkup(report, name, text) {
  const parser = new Parser(
    {
      onopentag(element, attributes) {
        const place = `${name}: <${element}>`;
        markupElement(report, element, place);
        for (const [attribute, value] of Object.entries(attributes))
          markupAttribute(report, element, attribute, value, `${name}: <${element} ${attribute}>`);
      },
    },
    { lowerCaseAttributeNames: false, lowerCaseTags: false, recognizeSelfClosing: true },
  );
  parser.write(text);
  parser.end();
}

const elementWays = (element) =>
  ['html', 'svg'].map((tree) => [tree, 'elements', element]).filter(lookUp);

/** Reports an element. */
export function markupElement(report, element, place) {
  const ways = elementWays(element);
  if (!ways.length) report.odd(`element: ${element}`, place);
  else if (ways.every((way) => report.lacks(way))) report.use(ways[0], place);
}

// What holds for attributes of roles stands in no browser's list of features.
const aria = /^(aria-[a-z]+|role)$/;

/** Reports an attribute, of any element where none is given, with its value. */
export function markupAttribute(report, element, attribute, value, place) {
  if (attribute.includes('{}') || aria.test(attribute)) return;
  const [, kind, name] = attribute.match(/^([.?@]?)(.*)$/);
  if (kind === '@') checkEvent(report, name, place);
  else if (kind === '.') property(report, name, place);
  else if (name === 'style') checkDeclarations(report, value ?? '', place);
  else plain(report, element, name, typeof value === 'string' ? value : '', place);
}

/** A property that a template sets: as old as the oldest thing that has one of the name. */
function property(report, name, place) {
  const list = (membersByName.get(name) ?? []).filter(({ owner }) => /Element|Node/.test(owner));
  if (!list.length) report.odd(`property: ${name}`, place);
  else if (list.every(({ way }) => report.lacks(way)))
    for (const { way } of list) report.use(way, place);
}

function plain(report, element, attribute, value, place) {
  const ways = attributeWays(element, attribute);
  const byType = element === 'input' && attribute === 'type'; // the data has each type by itself
  if (!ways.length && !byType) report.odd(`attribute: ${element ?? '*'} ${attribute}`, place);
  else if (ways.length && ways.every((way) => report.lacks(way))) report.use(ways[0], place);
  if (attribute === 'media') checkMedia(report, value, place);
  if (value.includes('{}')) return;
  for (const one of attribute === 'rel' ? value.split(/\s+/) : [value]) {
    const found = byType
      ? [['html', 'elements', 'input', `type_${one}`]]
      : ways.map((way) => [...way, one]).filter((way) => one && lookUp(way));
    const told = byType || (element === 'link' && attribute === 'rel') || (element === 'meta' && attribute === 'name'); // prettier-ignore
    if (found.length) report.use(found[0], place, `${element} ${attribute}: ${one}`);
    else if (told) report.odd(`${element} ${attribute}: ${one}`, place);
  }
}

function attributeWays(element, attribute) {
  const name = attribute.startsWith('data-') ? 'data_attributes' : attribute;
  const elements = element
    ? elementWays(element)
    : Object.keys(lookUp(['html', 'elements'])).map((one) => ['html', 'elements', one]);
  return [
    ...elements.map((way) => [...way, name]),
    ['html', 'global_attributes', name],
    ...(!element || elements.some(([tree]) => tree === 'svg')
      ? [['svg', 'global_attributes', name.replace(':', '_')], ['css', 'properties', name]] // prettier-ignore
      : []),
  ].filter((way) => lookUp(way)?.__compat);
}
