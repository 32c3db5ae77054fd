// What drives a browser holds on to every element that it once looked for, and keeps the
// tree for assistive technology up to date: that would be counted as memory of the page.
// A connection anew lets go of it, but leaves the functions of the one before in the page.

/** What the driver keeps for itself as long as the page is there. */
const itsOwn = (found) => found.className === 'HTMLDocument';

const elements = ['node', 'array']; // an array is what several were found in

/** Returns a function that lets go, in the page, of the elements that were found since. */
export function toLetGo(page) {
  const { client } = page.mainFrame();
  const send = client.send.bind(client);
  const ids = new Set();
  client.send = async (method, ...rest) => {
    const answer = await send(method, ...rest);
    const found = answer?.result ?? answer?.object;
    if (found?.objectId && elements.includes(found.subtype) && !itsOwn(found))
      ids.add(found.objectId);
    if (method === 'Runtime.releaseObject') ids.delete(rest[0].objectId);
    return answer;
  };
  return async () => {
    await send('Accessibility.enable'); // without which there is nothing to disable
    await send('Accessibility.disable');
    for (const objectId of ids) await send('Runtime.releaseObject', { objectId });
    ids.clear();
  };
}
