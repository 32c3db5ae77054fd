// Files that are chosen on the screen, without a disk.

/** Chooses a text as a file of that name. */
export const chooseText = async (page, selector, name, text) => {
  await page.waitForSelector(selector);
  await page.$eval(
    selector,
    (input, file, content) => {
      const chosen = new DataTransfer();
      chosen.items.add(new File([content], file));
      input.files = chosen.files;
      input.dispatchEvent(new Event('change', { bubbles: true }));
    },
    name,
    text,
  );
};

/** Chooses a picture of 40 by 30 points. */
export const chooseSmallPicture = async (page, selector) => {
  await page.waitForSelector(selector);
  await page.$eval(selector, async (input) => {
    const canvas = new OffscreenCanvas(40, 30);
    canvas.getContext('2d').fillRect(5, 5, 30, 20);
    const blob = await canvas.convertToBlob({ type: 'image/png' });
    const chosen = new DataTransfer();
    chosen.items.add(new File([blob], 'small.png', { type: blob.type }));
    input.files = chosen.files;
    input.dispatchEvent(new Event('change', { bubbles: true }));
  });
};
