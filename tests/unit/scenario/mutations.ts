/** What a foreman can break in a sound scenario: each mutation changes one field of a shipped document. */
import type { FindingCode } from '#lib/scenario/index.ts';
import { valueAt, withValue, type Path } from '../../support/mutations.ts';

export interface Mutation {
	/** What is broken, in words. */
	readonly name: string;
	/** The shipped scenario that it is broken in. */
	readonly of: string;
	/** The field that is changed. */
	readonly path: Path;
	/** What is put there: a value, or undefined to leave the field out, or parts put over those of the object there. */
	readonly value?: unknown;
	readonly parts?: Readonly<Record<string, unknown>>;
	/** The finding that must name the field. */
	readonly code: FindingCode;
}

const FORTY = `The worker checks the bolt and the hook and the sling and the ring and the strap and ${'the clip and '.repeat(8)}then goes on.`;

/** Twenty and more, none a shade of another. */
export const MUTATIONS: readonly Mutation[] = [
	{ name: 'the ground always lies far too deep', of: 'bridge-bearing', path: ['draws', 9], parts: { from: 30, to: 40 }, code: 'check-never-fails' },
	{ name: 'the head is below the D-ring', of: 'bridge-bearing', path: ['draws', 1], parts: { from: -0.1, to: -0.05 }, code: 'impossible-site' },
	{ name: 'the lanyard is too short to reach', of: 'bridge-bearing', path: ['draws', 2], parts: { from: 0.4, to: 0.5 }, code: 'seldom-drawn' },
	{
		name: 'the anchorage is always too weak',
		of: 'telecom-mast',
		path: ['draws', 10],
		parts: { among: [{ value: 6, unit: 'kN' }, { value: 8, unit: 'kN' }] },
		code: 'check-always-fails'
	},
	{ name: 'one constraint contradicts another', of: 'bridge-bearing', path: ['constraints', 2], value: { of: 'freeFall', atMost: { value: 0.3, unit: 'm' } }, code: 'constraints-clash' },
	{ name: 'a constraint that no plan keeps', of: 'bridge-bearing', path: ['constraints', 0, 'atLeast', 'value'], value: 9, code: 'constraint-never-met' },
	{ name: 'a constraint that hardly a plan keeps', of: 'bridge-bearing', path: ['constraints', 0, 'atLeast', 'value'], value: 1.5, code: 'many-tries' },
	{ name: 'an aim that nothing in the plans can meet', of: 'bridge-bearing', path: ['aims', 2], value: { fails: 'connectors', weight: 1 }, code: 'aim-not-met' },
	{ name: 'nearly all draws are to pass', of: 'bridge-bearing', path: ['aims', 0, 'weight'], value: 30, code: 'lopsided' },
	{
		name: 'the label begins above where it ends',
		of: 'silo-two-workers',
		path: ['draws', 6],
		parts: { among: [{ value: 140, unit: 'kg' }, { value: 150, unit: 'kg' }] },
		code: 'check-always-fails'
	},
	{ name: 'kneeling brings the D-ring to the knee', of: 'flat-roof-edge', path: ['draws', 3], parts: { from: 1.1, to: 1.5 }, code: 'impossible-site' },
	{ name: 'an obstacle stands higher than the deck', of: 'bridge-bearing', path: ['draws', 8], parts: { from: 6.5, to: 7.5 }, code: 'impossible-site' },
	{ name: 'a margin that makes two slips alike', of: 'flat-roof-edge', path: ['draws', 9], parts: { among: [{ value: 0.55, unit: 'ft' }, { value: 0.6, unit: 'ft' }] }, code: 'slips-alike' },
	{ name: 'a range that makes two slips alike', of: 'bridge-bearing', path: ['draws', 6], parts: { from: 0.98, to: 1 }, code: 'slips-alike' },
	{ name: 'slips declared equal that are not', of: 'bridge-bearing', path: ['equalSlips'], value: [['margin-left-out', 'stretch-left-out']], code: 'declared-but-not-equal' },
	{ name: 'a fact that is drawn and not told', of: 'bridge-bearing', path: ['words', 'en', 'facts', 'obstacle:beam', 'there'], value: undefined, code: 'fact-untold' },
	{ name: 'a sentence of forty words', of: 'bridge-bearing', path: ['words', 'en', 'body', 0], value: FORTY, code: 'long-sentence' },
	{ name: 'a story left in English', of: 'bridge-bearing', path: ['words', 'es', 'body', 0], value: 'The lanyard is hooked into an anchor bolt in the deck slab overhead. Bolt, hooks and D-ring go together.', code: 'untranslated' },
	{ name: 'a strap in the story that is not in the plan', of: 'bridge-bearing', path: ['words', 'en', 'lead'], value: '{name} hangs on a strap of {connectorLength}.', code: 'slot-without-value' },
	{ name: 'a story that names nobody', of: 'bridge-bearing', path: ['words', 'es', 'lead'], value: 'Alguien mide un apoyo.', code: 'name-untold' },
	{ name: 'a range of one value', of: 'bridge-bearing', path: ['draws', 6, 'to'], value: 0.2, code: 'one-value' },
	{ name: 'the force when wet is not on the label', of: 'deck-stripping', path: ['base', 'absorber', 'conditionedForce'], value: undefined, code: 'ask-without-value' },
	{ name: 'the average force lies above the greatest', of: 'dock-sign', path: ['draws', 5], parts: { from: 2300, to: 2600 }, code: 'impossible-site' },
	{ name: 'wet, the absorber holds with less force than dry', of: 'girder-frost', path: ['draws', 11], parts: { from: -420, to: -90 }, code: 'impossible-site' },
	{ name: 'more deceleration is stated than the absorber can open', of: 'tank-roof', path: ['draws', 6], parts: { from: 5, to: 6 }, code: 'check-always-fails' },
	{ name: 'a range finer than answers can be typed', of: 'bridge-bearing', path: ['draws', 6, 'step'], value: 0.004, code: 'off-answer-grid' },
	{ name: 'a decoy that is the right margin', of: 'telecom-mast', path: ['decoys', 0, 'practice'], value: 'australia', code: 'decoy-alike' },
	{ name: 'a rescue is never arranged', of: 'girder-frost', path: ['draws', 13, 'among'], value: ['not-arranged'], code: 'check-always-fails' },
	{ name: 'the absorber always pulls far too hard', of: 'dock-sign', path: ['draws', 6], parts: { from: 4000, to: 5000 }, code: 'check-always-fails' },
	{ name: 'the harness holds nobody', of: 'silo-weld', path: ['draws', 8], parts: { from: 20, to: 40 }, code: 'check-always-fails' },
	{ name: 'the worker is further off than the lanyard is long', of: 'tank-roof', path: ['draws', 4], parts: { from: 14, to: 16 }, code: 'check-always-fails' },
	{ name: 'the line runs over an edge', of: 'bridge-bearing', path: ['base', 'lineMeetsEdge'], value: true, code: 'plan-refused' },
	{ name: 'a number is drawn twice', of: 'bridge-bearing', path: ['draws', 10], value: { sets: ['lanyardLength'], from: 1.4, to: 2, step: 0.05, unit: 'm' }, code: 'drawn-twice' }
];

/** @returns the changed document. */
export function mutated(document: unknown, { path, value, parts }: Mutation): unknown {
	if (parts === undefined) return inserted(document, path, value);
	return withValue(document, path, { ...(valueAt(document, path) as object), ...parts });
}

/** As `withValue`, but a place at the end of a list is a new entry. */
function inserted(document: unknown, path: Path, value: unknown): unknown {
	const list = valueAt(document, path.slice(0, -1));
	if (!Array.isArray(list) || path.at(-1) !== list.length) return withValue(document, path, value);
	return withValue(document, path.slice(0, -1), [...list, value]);
}

/** Whether a finding's path is the field: the field itself, a part of it, or what it is a part of, as long as that is no whole section of the document. */
export function names(finding: Path, field: Path): boolean {
	const common = Math.min(finding.length, field.length);
	const same = field.slice(0, common).every((key, i) => key === finding[i]);
	return same && finding.length >= Math.min(2, field.length);
}
