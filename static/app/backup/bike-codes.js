import { codesOf } from '../cards/qr/codes.js';
import { bikeFile } from './one-bike.js';

/**
 * One bike with its record, without pictures, as the texts of QR codes; undefined when it is
 * too large for them.
 *
 * @param {string} id
 * @param {boolean} persons whether they may hold what tells of persons
 * @param {number} most bytes that whoever reads them takes
 */
export async function bikeCodes(id, persons, most) {
  const file = await bikeFile(id, { persons, plain: true, photos: false });
  return file.size > most ? undefined : codesOf(await file.text(), 'bike');
}
