import { refuse, type Read } from './outcome.ts';

/** An option of a command. */
export interface OptionSpec {
	/** What stands for its value in the help: `N`, `metric|us`. */
	readonly value: string;
	readonly about: string;
	readonly required?: boolean;
	/** The only values there are; without it, any text. */
	readonly among?: readonly string[];
	/** Stands alone, without a value. */
	readonly flag?: boolean;
}

/** What a command takes. */
export interface ArgumentSpec {
	/** Names of the arguments that stand by themselves, all needed: `PLAN.json`. */
	readonly positionals: readonly string[];
	/** Names of arguments behind them that may be missing, from the last on. */
	readonly optional?: readonly string[];
	/** By name, without the hyphens. */
	readonly options: Readonly<Record<string, OptionSpec>>;
}

/** The arguments of a command, checked against what it takes. */
export interface Arguments {
	readonly positionals: readonly string[];
	/** Options that were given, by name. */
	readonly options: ReadonlyMap<string, string>;
}

/** How much of a wrong argument is said back, characters. */
const SAID_BACK = 40;

/** @returns an argument as it is said back: quoted, cut short. */
export function quoted(text: string): string {
	return JSON.stringify(text.length > SAID_BACK ? `${text.slice(0, SAID_BACK)}…` : text);
}

function listed(words: readonly string[]): string {
	return words.length > 1 ? `one of ${words.join(', ')}` : (words[0] ?? 'nothing');
}

/**
 * Reads what stands behind a command's name: `--name value`, `--name=value`, and the rest in order; behind
 * `--` nothing is an option. The value of an option may begin with a hyphen.
 */
export function readArguments(given: readonly string[], spec: ArgumentSpec): Read<Arguments> {
	const positionals: string[] = [];
	const options = new Map<string, string>();
	for (let i = 0; i < given.length; i += 1) {
		const word = given[i] ?? '';
		if (word === '--') {
			positionals.push(...given.slice(i + 1));
			break;
		}
		if (!word.startsWith('--')) {
			positionals.push(word);
			continue;
		}
		const equals = word.indexOf('=');
		const name = word.slice(2, equals < 0 ? undefined : equals);
		const option = Object.hasOwn(spec.options, name) ? spec.options[name] : undefined;
		if (option === undefined) {
			const known = Object.keys(spec.options).map((one) => `--${one}`);
			return refuse(`--${name.slice(0, SAID_BACK)}`, 'is no option of this command', known.length === 0 ? 'leave it out' : `use ${listed(known)}`);
		}
		if (options.has(name)) return refuse(`--${name}`, 'is given twice', 'give it once');
		if (option.flag === true) {
			if (equals >= 0) return refuse(`--${name}`, 'takes no value', `give --${name} alone`);
			options.set(name, '');
			continue;
		}
		if (equals < 0) i += 1;
		const value = equals < 0 ? given[i] : word.slice(equals + 1);
		if (value === undefined || value === '') return refuse(`--${name}`, 'has no value', `give --${name} ${option.value}`);
		if (option.among !== undefined && !option.among.includes(value)) {
			return refuse(`--${name}`, `is ${quoted(value)}`, `give ${listed(option.among)}`);
		}
		options.set(name, value);
	}
	for (const [i, name] of spec.positionals.entries()) {
		if (positionals[i] === undefined || positionals[i] === '') return refuse(name, 'is missing', `give ${name} behind the command`);
	}
	const extra = positionals[spec.positionals.length + (spec.optional ?? []).length];
	if (extra !== undefined) return refuse(quoted(extra), 'is one argument too many', 'leave it out, or put quotation marks round a text with spaces');
	for (const [name, option] of Object.entries(spec.options)) {
		if (option.required === true && !options.has(name)) return refuse(`--${name}`, 'is missing', `give --${name} ${option.value}`);
	}
	return { kind: 'read', value: { positionals, options } };
}

/** @returns the seed of an option: a whole number that a double holds exactly. */
export function readSeed(text: string): Read<number> {
	const seed = Number(text);
	if (!/^\d{1,16}$/.test(text) || !Number.isSafeInteger(seed)) {
		return refuse('--seed', `is ${quoted(text)}`, `give a whole number from 0 to ${Number.MAX_SAFE_INTEGER}`);
	}
	return { kind: 'read', value: seed };
}
