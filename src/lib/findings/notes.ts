/** What explains a look, with its sources; the words stand in the message catalogue under the same id. */

/** How a source was come by; `practice`: common practice, no source. */
export type SourceMark = 'read' | 'secondary' | 'memory' | 'practice';

export interface NoteSource {
	/** Clause or document; undefined for common practice. */
	readonly clause?: string;
	readonly mark: SourceMark;
}

const read = (clause: string): NoteSource => ({ clause, mark: 'read' });
const secondary = (clause: string): NoteSource => ({ clause, mark: 'secondary' });
const memory = (clause: string): NoteSource => ({ clause, mark: 'memory' });
const practice: NoteSource = { mark: 'practice' };

const INSPECTION = read('29 CFR 1926.502(d)(21)');
const MAKER = memory('EN 365');
const SEAT: readonly NoteSource[] = [read('29 CFR 1926.502(d)(6)'), read('29 CFR 1910.140(c)(7)–(9)')];

export const NOTES = {
	sound: [INSPECTION],
	dirt: [practice],
	crease: [practice],
	scuff: [practice],
	'thread-colour': [practice],
	'label-dirty': [practice],
	cut: [INSPECTION, MAKER],
	burn: [INSPECTION, MAKER],
	chemical: [INSPECTION, MAKER],
	wear: [INSPECTION, MAKER],
	'stitch-pulled': [INSPECTION, MAKER],
	'stitch-gone': [INSPECTION, MAKER],
	'metal-bent': [INSPECTION, MAKER],
	'metal-nick': [INSPECTION, MAKER],
	'metal-crack': [INSPECTION, MAKER],
	corrosion: [INSPECTION, MAKER],
	'label-unreadable': [MAKER],
	'label-missing': [MAKER],
	indicator: [read('29 CFR 1926.502(d)(19)')],
	'pack-open': [read('29 CFR 1926.502(d)(19)')],
	'gate-gap': [read('29 CFR 1926.502(d)(5)'), INSPECTION],
	'lock-missing': [read('29 CFR 1926.502(d)(5)'), read('29 CFR 1910.140(c)(7)–(9)')],
	knot: [secondary('29 CFR 1926 Subpart M, Appendix C')],
	'strap-twisted': [practice],
	'shoulder-slipped': [practice],
	'ring-high': [read('29 CFR 1926.502(d)(17)'), read('29 CFR 1910.140(c)(22)')],
	'ring-low': [read('29 CFR 1926.502(d)(17)'), read('29 CFR 1910.140(c)(22)')],
	'seat-strap-up': [practice],
	'leg-loose': [practice],
	'lanyard-on-belt': [read('29 CFR 1926.502(d)(17)')],
	'chest-middle': [practice],
	'chest-low': [practice],
	'chest-high': [read('29 CFR 1910.140(d)(1)(iv)'), practice],
	'buckle-half': [practice],
	'end-loose': [practice],
	'anchorage-approved': [read('29 CFR 1926.502(d)(15)')],
	'anchorage-unapproved': [read('29 CFR 1926.502(d)(15)')],
	'anchorage-rail': [read('29 CFR 1926.502(d)(23)')],
	'edge-clear': [read('S.I. 299/2007 (Ireland), reg. 112')],
	'edge-line': [read('S.I. 299/2007 (Ireland), reg. 112')],
	'one-person': [read('29 CFR 1926.502(d)(15)')],
	'two-persons': [read('29 CFR 1926.502(d)(15)')],
	'one-absorber': [memory('EN 363')],
	'absorbers-in-series': [memory('EN 363'), practice],
	'rescue-ready': [read('29 CFR 1926.502(d)(20)')],
	'rescue-none': [read('29 CFR 1926.502(d)(20)')],
	'both-clipped': [practice],
	'one-leg-only': [practice],
	'low-clip': [practice],
	'one-leg-holds': [practice],
	'open-bracket': [practice],
	'parked-tab': [practice],
	'parked-ring': [practice],
	'hook-seated': SEAT,
	'tip-loaded': [...SEAT, practice],
	'gate-loaded': [...SEAT, practice],
	'hook-to-hook': [read('29 CFR 1926.502(d)(6)')],
	'two-hooks-one-ring': [read('29 CFR 1926.502(d)(6)')],
	'tie-back-unrated': [read('29 CFR 1926.502(d)(6)'), practice],
	'tie-back-rated': [practice],
	restrained: [read('Work at Height Regulations 2005 (UK), Schedule 5')],
	railing: [practice],
	'hole-covered': [practice],
	'reach-past-edge': [read('Work at Height Regulations 2005 (UK), Schedule 5')],
	'rescue-named': [read('SOR/86-304, s. 12.06(2)')],
	'rescue-unnamed': [read('SOR/86-304, s. 12.06(2)')],
	'rescue-kit': [read('29 CFR 1926.502(d)(20)')],
	'rescue-kit-gone': [read('29 CFR 1926.502(d)(20)')],
	'rescue-helper': [read('Work at Height Regulations 2005 (UK), Schedule 5')],
	'works-alone': [read('Work at Height Regulations 2005 (UK), Schedule 5')],
	'rescue-reach': [read('29 CFR 1926.502(d)(20)')],
	'rescue-short': [read('29 CFR 1926.502(d)(20)')],
	'rescue-way': [practice],
	'rescue-blocked': [practice],
	'sling-sleeved': [secondary('29 CFR 1926 Subpart M, Appendix C')],
	'sling-bare': [secondary('29 CFR 1926 Subpart M, Appendix C')],
	'term-free-fall': [read('29 CFR 1926.500(b)')],
	'term-elongation': [read('29 CFR 1926.500(b)')],
	'term-stretch': [practice],
	'term-margin': [practice],
	moment: [read('29 CFR 1926.500(b)')]
} as const satisfies Readonly<Record<string, readonly NoteSource[]>>;

export type NoteId = keyof typeof NOTES;

/** @returns the sources of a note. @throws RangeError on a note that is not there. */
export function sourcesOf(note: string): readonly NoteSource[] {
	if (!Object.hasOwn(NOTES, note)) throw new RangeError(`there is no note "${note}"`);
	return NOTES[note as NoteId];
}
