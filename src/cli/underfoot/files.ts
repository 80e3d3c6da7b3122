import { readFileSync, statSync } from 'node:fs';
import { basename, resolve } from 'node:path';
import type { ZodType } from 'zod';
import { lanyardPlanSchema, planSchema } from '#lib/arrest/schema.ts';
import type { Plan, RefusedPlan } from '#lib/arrest/index.ts';
import { shippedScenarios } from '#lib/course/shipped.ts';
import type { Scenario } from '#lib/scenario/index.ts';
import { scenarioSchema } from '#lib/scenario/schema.ts';
import { problemsOf } from '#lib/server/index.ts';
import { quoted } from './arguments.ts';
import { readAs, refuse, type Read } from './outcome.ts';

/** The longest file that is read, bytes: hundreds of times what a plan or a scenario needs. */
const LONGEST_FILE = 8 * 1024 * 1024;

/** The folder that a relative path starts from: npm runs commands in the package's folder and names the caller's. */
export function startFolder(): string {
	const { INIT_CWD, npm_lifecycle_event } = process.env;
	return npm_lifecycle_event === 'underfoot' && INIT_CWD !== undefined ? INIT_CWD : process.cwd();
}

/** The reason why a file cannot be opened, in words. */
function whyNot(error: unknown): string {
	const code = error instanceof Error && 'code' in error ? error.code : undefined;
	if (code === 'ENOENT' || code === 'ENOTDIR') return 'does not exist';
	if (code === 'EACCES' || code === 'EPERM') return 'may not be read';
	return 'cannot be read';
}

/**
 * Reads a file of JSON.
 * @param field what the file is called where it is named as wrong
 */
export function readJsonFile(path: string, field: string): Read<unknown> {
	const name = quoted(basename(path));
	let bytes: Buffer;
	try {
		const at = resolve(startFolder(), path);
		const found = statSync(at);
		if (!found.isFile()) return refuse(field, `is ${name}, which is no file`, 'give the path of a JSON file');
		if (found.size > LONGEST_FILE) {
			return refuse(field, `is longer than ${LONGEST_FILE} bytes`, 'give one plan or scenario in a file of its own');
		}
		bytes = readFileSync(at);
	} catch (error) {
		return refuse(field, `is ${name}, which ${whyNot(error)}`, 'give the path of a JSON file');
	}
	let text: string;
	try {
		text = new TextDecoder('utf-8', { fatal: true }).decode(bytes);
	} catch {
		return refuse(field, 'is not written in UTF-8', 'save it as JSON in UTF-8');
	}
	try {
		return readAs<unknown>(JSON.parse(text));
	} catch (error) {
		const where = /line \d+ column \d+/.exec(error instanceof Error ? error.message : '')?.[0];
		return refuse(field, `is not JSON${where === undefined ? '' : ` at ${where}`}`, 'give a file that holds one JSON object');
	}
}

/** @returns a document that has passed its schema. */
export function readDocument<Value>(input: unknown, schema: ZodType<Value>, whole: string): Read<Value> {
	const parsed = schema.safeParse(input);
	if (parsed.success) return readAs(parsed.data);
	return { kind: 'refused', problems: problemsOf(parsed.error.issues, input, { whole }) };
}

/** The schema that says most about what is wrong: a lanyard plan is not held against the refused systems. */
function schemaOfPlan(input: unknown): ZodType<Plan | RefusedPlan> {
	const system = typeof input === 'object' && input !== null && 'system' in input ? input.system : undefined;
	return system === 'lanyard' ? lanyardPlanSchema : planSchema;
}

/** @returns the plan of a document. */
export function readPlan(input: unknown): Read<Plan> {
	return readDocument(input, schemaOfPlan(input), 'plan');
}

/** @returns the scenario of a document. */
export function readScenario(input: unknown): Read<Scenario> {
	return readDocument(input, scenarioSchema, 'scenario');
}

/** @returns a shipped scenario by its name, or the scenario in a file. */
export function findScenario(named: string): Read<Scenario> {
	if (/[/\\.]/.test(named)) {
		const file = readJsonFile(named, 'SCENARIO');
		return file.kind === 'read' ? readScenario(file.value) : file;
	}
	const shipped = shippedScenarios();
	const found = shipped.find((scenario) => scenario.id === named);
	if (found !== undefined) return readAs(found);
	return refuse('SCENARIO', `is ${quoted(named)}`, `give the path of a JSON file or one of ${shipped.map((one) => one.id).join(', ')}`);
}
