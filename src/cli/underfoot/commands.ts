import type { Language } from '#lib/quantity/index.ts';
import { messages } from '#lib/text/index.ts';
import { analysePlan } from './analyse.ts';
import { quoted, readArguments, readSeed, type Arguments, type ArgumentSpec, type OptionSpec } from './arguments.ts';
import { demo } from './demo.ts';
import { drawProblem, drawingFrom, toldProblem } from './draw.ts';
import { findScenario, readJsonFile, readPlan } from './files.ts';
import { findAsk, gradeAnswer, readAnswer } from './grade.ts';
import { USUAL_DRAWS, inspectScenario, readDraws } from './inspect.ts';
import { backup, restore } from './keeping.ts';
import { refuse, type Outcome } from './outcome.ts';
import { newPasswordCode, newSetUpCode } from './people.ts';
import { newSigningKey, verifyAll } from './records.ts';
import { DOCUMENTS, jsonSchemaOf } from './schema.ts';
import { UNIT_SYSTEMS, type UnitSystem } from './writing.ts';

/** One command of `underfoot`. */
export interface Command extends ArgumentSpec {
	readonly about: string;
	run(given: Arguments): Outcome | Promise<Outcome>;
}

const SEED: OptionSpec = { value: 'N', about: 'whole number; the same seed gives the same problem', required: true };
const LANGUAGE: OptionSpec = { value: 'en|es', about: 'language of the words and of the decimal mark (en)', among: ['en', 'es'] };

function languageOf(given: Arguments): Language {
	return given.options.get('language') === 'es' ? 'es' : 'en';
}

function unitsOf(given: Arguments): UnitSystem {
	return given.options.get('units') === 'us' ? 'us' : 'metric';
}

/** All commands by their names, in the order of the help. */
export const COMMANDS: Readonly<Record<string, Command>> = {
	analyse: {
		about: 'every quantity of a plan with its working, every check, the verdict',
		positionals: ['PLAN.json'],
		options: { units: { value: 'metric|us', about: 'units written beside SI (metric)', among: UNIT_SYSTEMS } },
		async run(given) {
			const file = readJsonFile(given.positionals[0] ?? '', 'PLAN.json');
			if (file.kind === 'refused') return file;
			const plan = readPlan(file.value);
			return plan.kind === 'read' ? analysePlan(plan.value, unitsOf(given), await messages('en')) : plan;
		}
	},
	backup: {
		about: 'a backup of the database (DATABASE_URL) while it is in use: whole, checked, with what it holds beside it as .json',
		positionals: [],
		optional: ['FOLDER'],
		options: {},
		run: (given) => backup(given.positionals[0])
	},
	demo: {
		about: 'fills an empty database (DATABASE_URL) with an invented organisation, and tells its passwords and PINs once',
		positionals: [],
		options: {},
		run: () => demo()
	},
	draw: {
		about: 'the site problem of a seed: story, plan, decoys, asks with the right answers',
		positionals: ['SCENARIO'],
		options: { seed: SEED, language: LANGUAGE },
		async run(given) {
			const problem = drawn(given);
			const language = languageOf(given);
			if (problem.kind === 'refused') return problem;
			const words = await messages(language);
			return drawingFrom(() => toldProblem(problem.value, language, words));
		}
	},
	grade: {
		about: 'the mark of an answer, the slips that explain it, the working',
		positionals: ['SCENARIO'],
		options: {
			seed: SEED,
			ask: { value: 'ID', about: 'the question that is answered', required: true },
			answer: {
				value: 'TEXT',
				about: 'a number as people type it, not-stated, tie-off or do-not-tie-off',
				required: true
			},
			language: LANGUAGE
		},
		async run(given) {
			const problem = drawn(given);
			if (problem.kind === 'refused') return problem;
			const ask = findAsk(problem.value, given.options.get('ask') ?? '');
			if (ask.kind === 'refused') return ask;
			const answer = readAnswer(ask.value, given.options.get('answer') ?? '');
			if (answer.kind === 'refused') return answer;
			const language = languageOf(given);
			return gradeAnswer(problem.value, ask.value, answer.value, language, await messages(language));
		}
	},
	inspect: {
		about: 'what drawing a scenario many times shows: solvable share, balance, spread, slips that fall together, faults',
		positionals: ['SCENARIO'],
		options: { draws: { value: 'N', about: `how many seeds are drawn (${USUAL_DRAWS})` } },
		async run(given) {
			const scenario = findScenario(given.positionals[0] ?? '');
			if (scenario.kind === 'refused') return scenario;
			const draws = readDraws(given.options.get('draws') ?? String(USUAL_DRAWS));
			if (draws.kind === 'refused') return draws;
			const words = await messages('en');
			return drawingFrom(() => inspectScenario(scenario.value, draws.value, words));
		}
	},
	'new-signing-key': {
		about: 'a new key that signs from now on; what the one before signed stays good',
		positionals: ['checkpoint|credential'],
		options: {},
		run: (given) => newSigningKey(given.positionals[0] ?? '')
	},
	'password-code': {
		about: 'a one-use code by which a trainer or employer chooses a new password; for who runs the server',
		positionals: ['EMAIL'],
		options: {},
		run: (given) => newPasswordCode(given.positionals[0] ?? '')
	},
	restore: {
		about: 'puts a backup in the place of the database (DATABASE_URL), after it was checked and its chains were verified',
		positionals: ['FILE'],
		options: { replace: { value: '', flag: true, about: 'even where an organisation is: the old database is moved aside and kept' } },
		run: (given) => restore(given.positionals[0] ?? '', given.options.has('replace'))
	},
	schema: {
		about: 'the JSON Schema of a document',
		positionals: [DOCUMENTS.join('|')],
		options: {},
		run(given) {
			const [named = ''] = given.positionals;
			const name = DOCUMENTS.find((one) => one === named);
			if (name === undefined) return refuse(DOCUMENTS.join('|'), `is ${quoted(named)}`, `give ${DOCUMENTS.join(' or ')}`);
			return { kind: 'done', output: jsonSchemaOf(name) };
		}
	},
	'set-up-code': {
		about: 'a one-use code by which a further organisation is set up; for who runs the server',
		positionals: [],
		options: {},
		run: () => newSetUpCode()
	},
	'verify-records': {
		about: 'whether the records of the database (DATABASE_URL) hold: chain, names, rows, checkpoints, and every answer marked again; exit code 1 if not',
		positionals: [],
		options: {
			organisation: { value: 'ID', about: 'only this organisation (all)' },
			checkpoint: { value: 'FILE', about: 'a checkpoint that was handed out before' },
			redraw: { value: 'PERCENT', about: 'share of the answers whose problem is drawn again from its seed (100)' },
			seed: { value: 'N', about: 'which answers that share takes; the same seed takes the same (any)' },
			'hashes-only': { value: '', flag: true, about: 'the chain and its checkpoints alone' }
		},
		run: (given) => verifyAll(given)
	}
};

function drawn(given: Arguments): ReturnType<typeof drawProblem> {
	const scenario = findScenario(given.positionals[0] ?? '');
	if (scenario.kind === 'refused') return scenario;
	const seed = readSeed(given.options.get('seed') ?? '');
	return seed.kind === 'read' ? drawProblem(scenario.value, seed.value) : seed;
}

/** @returns how to call a command. */
function usageOf(name: string, command: Command): string {
	const options = Object.entries(command.options).map(([option, { value, required, flag }]) => {
		const written = flag === true ? `--${option}` : `--${option} ${value}`;
		return required === true ? ` ${written}` : ` [${written}]`;
	});
	const optional = (command.optional ?? []).map((argument) => `[${argument}]`);
	return `${[name, ...command.positionals, ...optional].join(' ')}${options.join('')}`;
}

function helpText(): string {
	const commands = Object.entries(COMMANDS).flatMap(([name, command]) => [
		`  ${usageOf(name, command)}`,
		`      ${command.about}`,
		...Object.entries(command.options).map(([option, { value, about, flag }]) => `        --${option}${flag === true ? '' : ` ${value}`}: ${about}`)
	]);
	return [
		'npm run --silent underfoot -- COMMAND …',
		'',
		...commands,
		'',
		'SCENARIO is the name of a shipped scenario or the path of a JSON file.',
		'The output is JSON. Exit code 0: done. 1: records do not hold. 2: the input cannot be used; the error output holds',
		'{"error":[{"field","problem","remedy"}]}. 3: the program failed.',
		''
	].join('\n');
}

/** Does what a command line asks for. */
export async function command(line: readonly string[]): Promise<Outcome> {
	const [name, ...rest] = line;
	if (name === undefined || name === '--help' || name === 'help') return { kind: 'help', text: helpText() };
	const found = Object.hasOwn(COMMANDS, name) ? COMMANDS[name] : undefined;
	if (found === undefined) return refuse('COMMAND', `is ${quoted(name)}`, `give one of ${Object.keys(COMMANDS).join(', ')}, or --help`);
	if (rest.includes('--help')) return { kind: 'help', text: helpText() };
	const given = readArguments(rest, found);
	return given.kind === 'read' ? found.run(given.value) : given;
}
