import { fileURLToPath } from 'node:url';

/**
 * A JPEG of 400 by 200 points as a camera writes it that was turned: its left half red,
 * its right half blue, and in its EXIF that its left belongs above, and a place.
 */
export const picture = fileURLToPath(new URL('turned.jpg', import.meta.url));
