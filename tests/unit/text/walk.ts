/** Every message of a language as text: functions are called with parts as a site problem would fill them. */
import type { Language } from '#lib/quantity/index.ts';
import { NUMBER_SLOTS } from '#lib/course/index.ts';
import { employerMessages, messages, recordMessages, staffMessages, type EmployerMessages, type Messages, type RecordMessages, type StaffMessages } from '#lib/text/index.ts';

export interface Said {
	/** Where it stands: "slips.margin-left-out.why". */
	readonly path: string;
	readonly text: string;
	/** Names of the parts that show in the text; empty for a plain text. */
	readonly read: readonly string[];
	readonly kind: 'text' | 'function';
}

const PARTS: Readonly<Record<Language, Record<string, unknown>>> = {
	en: {
		name: 'Marit',
		value: '1.40 m',
		right: '3.50 m',
		term: '1.20 m',
		amount: '1.00 m',
		used: '0.30 m',
		margin: '0.60 m',
		left: '0.40 m',
		thing: 'the stacked panels',
		from: 'the shelf',
		surface: 'the shelf',
		lowerLevel: 'the footing',
		anchorage: 'the eye bolt',
		site: 'Pier 4',
		the: 'the free fall',
		clause: 'the margin of 1.00 m is not on your tape',
		first: '1.40 m',
		second: '2.00 m',
		checks: 'clearance, rescue',
		check: 'free fall',
		what: 'horizontal lifeline',
		t: '0.81 s',
		v: '2.7 m/s',
		event: 'lanyard tight',
		part: '1+2',
		example: '1.40 m',
		typed: '5.6 ft',
		unit: 'm'
	},
	es: {
		name: 'Marit',
		value: '1,40 m',
		right: '3,50 m',
		term: '1,20 m',
		amount: '1,00 m',
		used: '0,30 m',
		margin: '0,60 m',
		left: '0,40 m',
		thing: 'los paneles apilados',
		from: 'la repisa',
		surface: 'la repisa',
		lowerLevel: 'la zapata',
		anchorage: 'el perno de ojo',
		site: 'Pila 4',
		the: 'la caída libre',
		clause: 'el margen de 1,00 m no está en su cinta',
		first: '1,40 m',
		second: '2,00 m',
		checks: 'espacio libre, rescate',
		check: 'caída libre',
		what: 'línea de vida horizontal',
		t: '0,81 s',
		v: '2,7 m/s',
		event: 'cuerda tensa',
		part: '1+2',
		example: '1,40 m',
		typed: '5,6 pies',
		unit: 'm'
	}
};

/** Numbers of the lessons' captions come ready written; any length stands for them. */
for (const slot of NUMBER_SLOTS) for (const language of ['en', 'es'] as const) PARTS[language][slot] ??= PARTS[language]['value'];

const NUMBERS: Readonly<Record<string, unknown>> = { n: 2, of: 5, count: 3, added: 3, changed: 2, gone: 1, us: false, asked: true };

/** Messages that take a list, not named parts. */
const LISTS: readonly string[] = ['common.list'];

/** Calls a message with parts of which none is missing; `value` says what each holds. */
function fill(message: (parts: unknown) => unknown, value: (part: string) => unknown): { text: string; asked: readonly string[] } {
	const asked = new Set<string>();
	const parts = new Proxy(
		{},
		{
			get: (_, key) => {
				asked.add(String(key));
				return value(String(key));
			}
		}
	);
	return { text: String(message(parts)), asked: [...asked] };
}

function call(path: string, message: (parts: unknown) => unknown, language: Language): { text: string; read: string[] } {
	if (LISTS.includes(path)) return { text: String(message(['x', 'y', 'z'])), read: [] };
	const { text } = fill(message, (part) => PARTS[language][part] ?? NUMBERS[part] ?? `‹${part}›`);
	// A part counts as read where it shows in the text: taking it and leaving it out is no use of it.
	const marked = fill(message, (part) => NUMBERS[part] ?? `‹${part}›`);
	const read = marked.asked.filter((part) => part in NUMBERS || marked.text.toLowerCase().includes(`‹${part.toLowerCase()}›`));
	return { text, read: read.sort() };
}

/** @returns the whole catalogue of a language, with what only trainers' pages load. */
export async function allMessages(language: Language): Promise<Messages & StaffMessages & EmployerMessages & RecordMessages> {
	return { ...(await messages(language)), ...(await staffMessages(language)), ...(await employerMessages(language)), ...(await recordMessages(language)) };
}

/** @returns all messages, in the order of the catalogue. */
export function everything(catalogue: Messages | (Messages & StaffMessages & EmployerMessages & RecordMessages), language: Language): readonly Said[] {
	const all: Said[] = [];
	const visit = (path: string, value: unknown): void => {
		if (typeof value === 'string') all.push({ path, text: value, read: [], kind: 'text' });
		else if (typeof value === 'function') {
			const { text, read } = call(path, (parts) => Reflect.apply(value, undefined, [parts]), language);
			all.push({ path, text, read, kind: 'function' });
		} else if (typeof value === 'object' && value !== null) {
			for (const [key, inner] of Object.entries(value)) visit(path === '' ? key : `${path}.${key}`, inner);
		} else throw new TypeError(`${path} is neither text nor function`);
	};
	visit('', catalogue);
	return all;
}

/** @returns the sentences of a text; what ends without a mark is a label and none. A decimal point ends nothing. */
export function sentencesOf(text: string): readonly string[] {
	return text.split(/(?<=[.?!][»”]?)\s+/u).filter((piece) => /[.?!][»”]?$/u.test(piece));
}
