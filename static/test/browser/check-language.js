// What must hold of every screen in every state in a language other than the
// default. It is tested in pseudo-languages, which show what a translation would meet.
import assert from 'node:assert/strict';
import { after, before, test } from 'node:test';
import { buildPseudoSite, setPhone } from './pseudo-site.js';
import { cutOff, notIsolated, readTexts, staysAmiss, stickingOut, textSize } from './layout.js';
import { openPhones } from './open-phones.js';
import { phoneOf, screens } from './screens.js';
import { untranslated } from './untranslated.js';

const small = { width: 360, height: 740 };

/** What can't be seen whole. */
const lost = async (page) => [...(await stickingOut(page)), ...(await cutOff(page))];

/** Tests all screens in that pseudo-language, in which words() must be read already: the ways have words of it. */
export function checkLanguage(language) {
  let phone;
  let end = () => {};
  before(async () => {
    const { archive, remove } = await buildPseudoSite();
    const opened = await openPhones(['-site', archive], [setPhone, language.tag]);
    phone = opened.phone;
    end = () => Promise.all([opened.end(), remove()]);
  });
  after(() => end());
  for (const states of Object.values(screens))
    for (const [name, way] of Object.entries(states))
      test(`${language.tag}: ${name}`, async (t) => {
        const page = await phone(phoneOf(way));
        await page.bringToFront();
        await page.setViewport(small);
        await way(page);
        await check(t, page, language);
      });
}

async function check(t, page, language) {
  await t.test('all is said in this language', async () => {
    assert.deepEqual(await untranslated(page, await readTexts(page), language), []);
  });
  if (language.dir === 'rtl')
    await t.test('names and figures keep their own direction', async () => {
      assert.deepEqual(await notIsolated(page), []);
    });
  await t.test('nothing is cut off at 360 px, nor with text of 200 %', async () => {
    assert.deepEqual(await staysAmiss(page, lost), []);
    await textSize(page, 2);
    try {
      assert.deepEqual(await staysAmiss(page, lost), [], 'text of 200 %');
    } finally {
      await textSize(page, 1);
    }
  });
}
