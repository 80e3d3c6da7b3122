import { expect, it } from 'vitest';
import { chooseLanguage } from '#lib/server/language.ts';

const OFFERED = ['en', 'es'] as const;

it.each([
	{ chosen: undefined, accepted: null, language: 'en' },
	{ chosen: undefined, accepted: 'es', language: 'es' },
	{ chosen: undefined, accepted: 'es-MX,en;q=0.8', language: 'es' },
	{ chosen: undefined, accepted: 'en;q=0.5, es;q=0.9', language: 'es' },
	{ chosen: undefined, accepted: 'fr, de;q=0.9', language: 'en' },
	{ chosen: undefined, accepted: 'fr, ES-419;q=0.3', language: 'es' },
	{ chosen: undefined, accepted: 'es;q=0, *', language: 'en' },
	{ chosen: undefined, accepted: ';;,,q=;q=x', language: 'en' },
	{ chosen: 'es', accepted: 'en', language: 'es' },
	{ chosen: 'xx', accepted: 'es', language: 'es' }
])('chose $chosen, accepts $accepted: reads $language', ({ chosen, accepted, language }) => {
	expect(chooseLanguage(OFFERED, chosen, accepted)).toBe(language);
});
