import { describe, expect, it } from 'vitest';
import { readArguments, readSeed, type ArgumentSpec } from '../../../../src/cli/underfoot/arguments.ts';

const SPEC: ArgumentSpec = {
	positionals: ['PLAN.json'],
	options: {
		units: { value: 'metric|us', about: '', among: ['metric', 'us'] },
		seed: { value: 'N', about: '', required: true }
	}
};

const read = (...given: string[]) => {
	const outcome = readArguments(given, SPEC);
	return outcome.kind === 'read' ? { positionals: outcome.value.positionals, options: Object.fromEntries(outcome.value.options) } : outcome.problems;
};

describe('the arguments of a command', () => {
	it.each([
		[['a.json', '--seed', '7']],
		[['--seed', '7', 'a.json']],
		[['--seed=7', 'a.json']],
		[['--seed', '7', '--', 'a.json']]
	])('%j are read in any order', (given) => {
		expect(read(...given)).toEqual({ positionals: ['a.json'], options: { seed: '7' } });
	});

	it('may have a value with a hyphen or an equals sign in it', () => {
		expect(read('a.json', '--seed', '-7')).toMatchObject({ options: { seed: '-7' } });
		expect(read('a.json', '--seed=a=b')).toMatchObject({ options: { seed: 'a=b' } });
		expect(read('--seed', '7', '--', '--odd.json')).toMatchObject({ positionals: ['--odd.json'] });
	});

	it.each([
		[['--seed', '7'], 'PLAN.json', 'is missing', 'give PLAN.json behind the command'],
		[['', '--seed', '7'], 'PLAN.json', 'is missing', 'give PLAN.json behind the command'],
		[['a.json', 'b.json', '--seed', '7'], '"b.json"', 'is one argument too many', 'leave it out, or put quotation marks round a text with spaces'],
		[['a.json'], '--seed', 'is missing', 'give --seed N'],
		[['a.json', '--seed'], '--seed', 'has no value', 'give --seed N'],
		[['a.json', '--seed', ''], '--seed', 'has no value', 'give --seed N'],
		[['a.json', '--seed='], '--seed', 'has no value', 'give --seed N'],
		[['a.json', '--seed', '1', '--seed', '2'], '--seed', 'is given twice', 'give it once'],
		[['a.json', '--sed', '1'], '--sed', 'is no option of this command', 'use one of --units, --seed'],
		[['a.json', '--constructor', '1'], '--constructor', 'is no option of this command', 'use one of --units, --seed'],
		[['a.json', '--units', 'imperial', '--seed', '1'], '--units', 'is "imperial"', 'give one of metric, us']
	])('%j are refused by name', (given, field, problem, remedy) => {
		expect(read(...given)).toEqual([{ field, problem, remedy }]);
	});

	it('say back little of a megabyte', () => {
		const long = 'x'.repeat(1024 * 1024);
		for (const given of [['a.json', long], ['a.json', `--${long}`], ['a.json', '--units', long]]) {
			expect(JSON.stringify(read(...given)).length).toBeLessThan(400);
		}
	});
});

describe('a seed', () => {
	it.each(['0', '7', '9007199254740991'])('%s is read', (text) => {
		expect(readSeed(text)).toEqual({ kind: 'read', value: Number(text) });
	});

	it.each(['-1', '1.5', '1e3', 'NaN', 'Infinity', 'seven', ' 7', '9007199254740992', '99999999999999999'])('%j is refused', (text) => {
		expect(readSeed(text)).toMatchObject({ kind: 'refused', problems: [{ field: '--seed', remedy: 'give a whole number from 0 to 9007199254740991' }] });
	});
});
