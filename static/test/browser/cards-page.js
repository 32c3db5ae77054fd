// Taking cards in and giving them away, as a person does it.
import { download } from './download.js';
import { tapFound } from './finger.js';
import { goTo } from './job-page.js';
import { openSite } from './open-site.js';
import { polling, untilState } from './page.js';
import { field, tap, tapText, untilSeen } from './person.js';
import { sampleCard, words } from './words.js';

/** A page of the site, as openSite, once it listens to its address. */
export async function openReady(t, before) {
  const site = await openSite(t, before);
  await untilState(site.page, 'ready');
  return site;
}

/** The record in which a phone keeps that card, with its line for lists. */
export const recordWith = (key, card) => ({
  key,
  card,
  text: JSON.stringify(card),
  bike: { id: card.id, name: `${card.make} ${card.model}`, layout: `layout.${card.layout}` },
  changed: '2026-11-01',
});

/** A card of one's own: a sample under another name, with what `change` makes of it. */
export function ownCard(id, model, change = () => {}) {
  const card = structuredClone(sampleCard('ondrake-quarto-830'));
  delete card.invented;
  Object.assign(card, { id, make: 'Plainford', model });
  change(card);
  return card;
}

/** The text of a pack of cards. */
export const packOf = (...cards) => JSON.stringify({ format: 'tidysump-cards', version: 1, cards });

/** Opens a text in the cards screen, by way of its field; any size does. */
export async function paste(page, text) {
  await goTo(page, '#/cards');
  await tapText(page, words('cards.paste'));
  const area = await field(page, words('cards.paste.text'));
  await area.evaluate((element, value) => {
    element.value = value;
    element.dispatchEvent(new Event('change', { bubbles: true }));
  }, text);
  await tap(page, words('cards.paste.read'));
}

/** Opens a file in the cards screen. */
export async function openFile(page, path) {
  await goTo(page, '#/cards');
  const input = await page.waitForSelector('input[type=file]');
  await input.uploadFile(path);
}

/** Keeps the `count` cards that are ticked in what was opened. */
export async function keep(page, count) {
  await tap(page, words('pack.keep', { count }));
  await untilSeen(page, words('pack.kept', { count, of: count }));
}

/** Ticks a card by the name that stands on it. */
export async function tick(page, name) {
  const label = (text) =>
    [...document.querySelectorAll('label.pick')].find((l) => l.textContent.includes(text));
  const find = (timeout) => page.waitForFunction(label, { polling, timeout }, name);
  await tapFound(page, find, name);
}

/** Saves the ticked cards; resolves to the file's path and text. */
export const save = (page, folder) => download(page, folder, words('cards.save'));
