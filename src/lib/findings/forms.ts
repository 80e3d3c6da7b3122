/**
 * What the parts of a picture can look like. A look is named by its shape. Its note explains it once the
 * answer is in: reject signs and errors have one each, and so have the harmless looks that are taken for one.
 */

/** What a look means: fit for use, to be put right before use, out of use, or wrong as it is rigged. */
export type Meaning = 'fine' | 'put-right' | 'take-out' | 'wrong';

export interface Look {
	readonly note: string;
	readonly means: Meaning;
	/** How often against the others of its meaning; 1 unless given. */
	readonly weight?: number;
}

const fine = (note: string, weight = 1): Look => ({ note, means: 'fine', weight });
const out = (note: string): Look => ({ note, means: 'take-out' });
const right = (note: string): Look => ({ note, means: 'put-right' });
const wrong = (note: string): Look => ({ note, means: 'wrong' });

export const FORMS = {
	webbing: {
		even: fine('sound', 2),
		dusty: fine('dirt'),
		creased: fine('crease'),
		notch: out('cut'),
		gloss: out('burn'),
		blotch: out('chemical'),
		fuzz: out('wear')
	},
	stitches: {
		rows: fine('sound', 2),
		'two-tone': fine('thread-colour'),
		'rows-open': out('stitch-pulled'),
		'rows-gap': out('stitch-gone')
	},
	ring: {
		round: fine('sound', 2),
		scuffed: fine('scuff'),
		oval: out('metal-bent'),
		nick: out('metal-nick'),
		pits: out('corrosion')
	},
	buckle: {
		frame: fine('sound', 2),
		scuffed: fine('scuff'),
		skewed: out('metal-bent'),
		crack: out('metal-crack')
	},
	tag: {
		full: fine('sound', 2),
		dirty: fine('label-dirty'),
		blank: out('label-unreadable'),
		stub: out('label-missing')
	},
	pack: {
		shut: fine('sound', 2),
		dusty: fine('dirt'),
		strip: out('indicator'),
		torn: out('pack-open')
	},
	hook: {
		shut: fine('sound', 2),
		scuffed: fine('scuff'),
		gap: out('gate-gap'),
		'gate-bent': out('metal-bent'),
		crack: out('metal-crack'),
		'no-catch': out('lock-missing'),
		pits: out('corrosion')
	},
	line: {
		even: fine('sound', 2),
		dusty: fine('dirt'),
		knot: out('knot'),
		notch: out('cut'),
		gloss: out('burn'),
		fuzz: out('wear')
	},
	'worn-shoulder': {
		flat: fine('sound', 2),
		dusty: fine('dirt'),
		twisted: right('strap-twisted'),
		slipped: right('shoulder-slipped'),
		notch: out('cut')
	},
	'worn-ring': {
		blades: fine('ring-high'),
		waist: right('ring-low')
	},
	'worn-seat': {
		under: fine('sound'),
		over: right('seat-strap-up')
	},
	'worn-leg': {
		snug: fine('sound', 2),
		dusty: fine('dirt'),
		twisted: right('strap-twisted'),
		loose: right('leg-loose'),
		fuzz: out('wear')
	},
	'worn-lanyard': {
		'on-ring': fine('sound'),
		'on-belt': right('lanyard-on-belt')
	},
	'worn-chest': {
		middle: fine('chest-middle'),
		belly: right('chest-low'),
		throat: right('chest-high')
	},
	'worn-buckle': {
		through: fine('sound', 2),
		half: right('buckle-half'),
		skewed: out('metal-bent')
	},
	'worn-end': {
		held: fine('sound'),
		hangs: right('end-loose')
	},
	anchorage: {
		'plate-tag': fine('anchorage-approved'),
		pipe: wrong('anchorage-unapproved'),
		rail: wrong('anchorage-rail')
	},
	'edge-line': {
		clear: fine('edge-clear'),
		'on-edge': wrong('edge-line')
	},
	people: {
		one: fine('one-person'),
		two: wrong('two-persons')
	},
	packs: {
		one: fine('one-absorber'),
		two: wrong('absorbers-in-series')
	},
	'rescue-post': {
		ready: fine('rescue-ready'),
		bare: wrong('rescue-none')
	},
	'leg-back': {
		'next-eye': fine('both-clipped'),
		hangs: wrong('one-leg-only'),
		'low-eye': wrong('low-clip')
	},
	'leg-front': {
		'eye-above': fine('both-clipped'),
		'low-eye': wrong('low-clip')
	},
	'leg-holding': {
		'eye-above': fine('one-leg-holds'),
		'low-eye': wrong('low-clip'),
		'open-arm': wrong('open-bracket')
	},
	'leg-spare': {
		'tear-tab': fine('parked-tab'),
		'hip-ring': wrong('parked-ring')
	},
	'hook-up': {
		'eye-seated': fine('hook-seated', 2),
		'shackle-seated': fine('hook-seated'),
		'tip-on-flange': wrong('tip-loaded'),
		'gate-on-bar': wrong('gate-loaded'),
		'hook-in-hook': wrong('hook-to-hook'),
		'two-in-ring': wrong('two-hooks-one-ring'),
		'round-and-back': wrong('tie-back-unrated'),
		'round-to-ring': fine('tie-back-rated')
	},
	'roof-side': {
		'reach-short': fine('restrained', 2),
		'rail-past': fine('railing'),
		'reach-past': wrong('reach-past-edge')
	},
	'roof-hole': {
		'reach-short': fine('restrained'),
		covered: fine('hole-covered'),
		'reach-past': wrong('reach-past-edge')
	},
	'rescue-names': {
		written: fine('rescue-named'),
		empty: wrong('rescue-unnamed')
	},
	'rescue-kit': {
		bag: fine('rescue-kit'),
		'bare-hook': wrong('rescue-kit-gone')
	},
	'rescue-helper': {
		stands: fine('rescue-helper'),
		nobody: wrong('works-alone')
	},
	'rescue-reach': {
		reaches: fine('rescue-reach'),
		short: wrong('rescue-short')
	},
	'rescue-way': {
		open: fine('rescue-way'),
		blocked: wrong('rescue-blocked')
	},
	'beam-hold': {
		clamp: fine('anchorage-approved'),
		'sling-sleeve': fine('sling-sleeved'),
		'round-to-ring': fine('tie-back-rated'),
		'sling-bare': wrong('sling-bare'),
		conduit: wrong('anchorage-unapproved'),
		'round-and-back': wrong('tie-back-unrated')
	},
	attachment: {
		back: fine('ring-high'),
		hip: wrong('lanyard-on-belt')
	},
	term: { plain: fine('moment') },
	moment: { plain: fine('moment') }
} as const satisfies Readonly<Record<string, Readonly<Record<string, Look>>>>;

export type FormId = keyof typeof FORMS;
type LooksOf<F extends FormId> = (typeof FORMS)[F];
/** Looks by form, for those who must have a text or a drawing for each. */
export type LookId<F extends FormId> = Extract<keyof LooksOf<F>, string>;

export function isFormId(id: string): id is FormId {
	return Object.hasOwn(FORMS, id);
}

/** @returns the looks of a form, in their fixed order. */
export function looksOf(form: FormId): readonly (readonly [id: string, look: Look])[] {
	return Object.entries<Look>(FORMS[form]);
}

/** @returns a look. @throws RangeError on one that the form does not have. */
export function lookOf(form: FormId, id: string): Look {
	const found = looksOf(form).find(([look]) => look === id);
	if (found === undefined) throw new RangeError(`a ${form} has no look "${id}"`);
	return found[1];
}
