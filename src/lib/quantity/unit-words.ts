/**
 * The words and signs that people type for units, in English and Spanish alike: crews mix both,
 * and no word of one means another unit in the other.
 */
import { ACCELERATION, AREA, FORCE, sameDimension } from './dimension.ts';
import type { Dimension } from './dimension.ts';
import type { Language } from './language.ts';
import { UNIT_IDS } from './unit.ts';
import type { UnitId } from './unit.ts';

const WORDS: Readonly<Record<UnitId, string>> = {
	m: 'm, mt, mts, mtr, mtrs, meter, meters, metre, metres, metro, metros',
	cm: 'cm, cms, centimeter, centimeters, centimetre, centimetres, centimetro, centimetros',
	mm: 'mm, mms, millimeter, millimeters, millimetre, millimetres, milimetro, milimetros',
	km: 'km, kms, kilometer, kilometers, kilometre, kilometres, kilometro, kilometros',
	ft: "', ft, fts, foot, feet, pie, pies",
	in: '", in, ins, inch, inches, pulg, pulgs, plg, pulgada, pulgadas',
	yd: 'yd, yds, yard, yards, yarda, yardas',
	m2: 'm², sq m, square meters, square metres, metros cuadrados',
	ft2: 'ft², sq ft, square feet, pies², pies cuadrados',
	kg: 'kg, kgs, kilo, kilos, kilogram, kilograms, kilogramme, kilogrammes, kilogramo, kilogramos',
	g: 'g, gr, grs, gram, grams, gramme, grammes, gramo, gramos',
	t: 't, tonne, tonnes, metric ton, metric tons, tonelada, toneladas',
	lb: 'lb, lbs, pound, pounds, libra, libras, #',
	N: 'n, newton, newtons',
	kN: 'kn, kns, kilonewton, kilonewtons',
	lbf: 'lbf, lbsf, lb-f, lb f, lbs force, lb force, pound-force, pounds-force, pound force, pounds force, pounds of force, libra fuerza, libras fuerza, libras-fuerza, libras de fuerza',
	kgf: 'kgf, kg-f, kg f, kp, kilogram-force, kilograms-force, kilogram force, kilogramos fuerza, kilogramos-fuerza, kilopondio, kilopondios',
	s: 's, sec, secs, second, seconds, seg, segs, segundo, segundos',
	ms: 'ms, msec, millisecond, milliseconds, milisegundo, milisegundos',
	min: 'min, mins, minute, minutes, minuto, minutos',
	'm/s': 'm/s, m/sec, m/seg, mps, meters per second, metres per second, metros por segundo',
	'km/h': 'km/h, kmh, kph, kmph, km/hr, kilometers per hour, kilometres per hour, kilometros por hora',
	'ft/s': 'ft/s, ft/sec, fps, feet per second, pies/s, pies/seg, pies por segundo',
	mph: 'mph, mi/h, miles per hour, millas por hora',
	'm/s2': 'm/s², m/s/s',
	'ft/s2': 'ft/s², ft/s/s, pies/s²',
	gn: 'gn, g0, gs',
	J: 'j, joule, joules, julio, julios',
	kJ: 'kj, kilojoule, kilojoules, kilojulio, kilojulios',
	ftlbf:
		'ftlbf, ft lbf, ft-lbf, ft·lbf, ftlb, ft lb, ft-lb, ft·lb, ft lbs, ft-lbs, foot-pound, foot-pounds, foot pounds, pies·lbf, pies lbf, pies-lbf, pie-libra, pies-libra, pies-libras',
	'N/m': 'n/m',
	'kN/m': 'kn/m',
	'lbf/ft': 'lbf/ft, lb/ft, lbf/pie, lb/pie',
	'1': '',
	'%': '%, percent, per cent, pct, por ciento'
};

const BY_WORD: ReadonlyMap<string, UnitId> = new Map(
	UNIT_IDS.flatMap((id) => {
		const words = WORDS[id] === '' ? [] : WORDS[id].split(', ');
		return words.map((word): [string, UnitId] => [word, id]);
	})
);

/** Words that mean another unit where that kind of thing is asked: US texts say pounds of a force. */
const BY_CONTEXT: readonly (readonly [Dimension, Partial<Record<UnitId, UnitId>>])[] = [
	[FORCE, { lb: 'lbf' }],
	[ACCELERATION, { g: 'gn' }]
];

/**
 * The unit that a word or sign names, or null.
 * @param text as typed after `plainText`; case, accents and abbreviation points do not matter
 * @param expected what the question asks for: "pounds" of a force are pounds-force, "6 g" of an
 * acceleration are multiples of standard gravity
 */
export function unitOfWord(text: string, expected: Dimension): UnitId | null {
	const word = text
		.normalize('NFD')
		.replace(/[\u0300-\u036f.]/g, '')
		.replace(/\^2/g, '²')
		.replace(/ ?([/·-]) ?/g, '$1')
		.trim()
		.toLowerCase();
	const found = BY_WORD.get(word);
	if (found === undefined) return null;
	const context = BY_CONTEXT.find(([dimension]) => sameDimension(dimension, expected));
	return context?.[1][found] ?? found;
}

/**
 * Writes a squared unit with the sign ², so that its 2 is not taken for a number of its own.
 * `5 m2` is an area only where an area is asked; else it may be 5 m 2 cm.
 */
export function markSquares(text: string, expected: Dimension): string {
	const marked = text.replace(/(\/ ?s)\^?2(?!\d)/gi, '$1²').replace(/(m|ft|pies?)\^2(?!\d)/gi, '$1²');
	return sameDimension(expected, AREA) ? marked.replace(/((?:^|[\d ])(?:m|ft|pies?))2(?!\d)/gi, '$1²') : marked;
}

const SYMBOLS: Readonly<Partial<Record<UnitId, string>>> = {
	m2: 'm²',
	ft2: 'ft²',
	'm/s2': 'm/s²',
	'ft/s2': 'ft/s²',
	gn: 'g',
	ftlbf: 'ft·lbf',
	'1': ''
};

const SPANISH_SYMBOLS: Readonly<Partial<Record<UnitId, string>>> = {
	ft: 'pies',
	in: 'pulg',
	ft2: 'pies²',
	'ft/s': 'pies/s',
	'ft/s2': 'pies/s²',
	mph: 'mi/h',
	ftlbf: 'pies·lbf',
	'lbf/ft': 'lbf/pie'
};

/** What is printed behind a number: `ft` in English, `pies` in Spanish; empty for a plain ratio. */
export function unitSymbol(unit: UnitId, language: Language): string {
	return (language === 'es' ? SPANISH_SYMBOLS[unit] : undefined) ?? SYMBOLS[unit] ?? unit;
}
