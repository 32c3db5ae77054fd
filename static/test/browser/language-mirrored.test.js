import { pseudoLanguages } from '../pseudo.js';
import { readIn } from './words.js';

const language = pseudoLanguages.find(({ dir }) => dir === 'rtl');
readIn(language);
const { checkLanguage } = await import('./check-language.js');
checkLanguage(language);
