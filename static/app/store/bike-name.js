/**
 * The one name of a bike, by which it is told from its twins: what it is called, its
 * plate, and make and model; other words for it where neither was told.
 *
 * @param {{ called?: string, plate?: string, words?: string } | null | undefined} bike what is told of it
 * @param {string} model
 */
export function bikeName(bike, model) {
  if (!bike) return model;
  const { called, plate, words } = bike;
  const told = called || plate ? [called, plate, model] : [model, words];
  return told.filter(Boolean).join(' · ');
}
