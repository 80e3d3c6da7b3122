/**
 * The picture tasks. A task says which parts its drawing has, how often how many of them are to be marked,
 * and what is chosen. Moments of a fall are drawn in `moment.ts`.
 */
import type { FormId } from './forms.ts';
import type { Difficulty, DrawingId, PictureKind } from './picture.ts';

/** What the choice at the end asks, and by what it is decided. */
export type ChoiceRule =
	/** Use it, or take it out of use. */
	| 'use'
	/** Use it, put it right first, or take it out of use. */
	| 'wear'
	/** Which of two may be used: the first, the second, both, neither. */
	| 'of-two'
	/** Go on, or do not go on. */
	| 'go';

export interface Slot {
	readonly id: string;
	readonly form: FormId;
}

interface TaskCommon {
	readonly id: string;
	readonly kind: PictureKind;
	readonly difficulty: Difficulty;
	readonly skills: readonly string[];
	/** Raised whenever the same seed would give another picture; the old version then stays beside it. */
	readonly version: number;
	readonly drawing: DrawingId;
}

export interface PartsTask extends TaskCommon {
	readonly kind: 'gear' | 'situation';
	readonly slots: readonly Slot[];
	/** Weights of 0, 1, 2, … parts to mark. */
	readonly counts: readonly number[];
	readonly choice: ChoiceRule;
}

export interface MomentTask extends TaskCommon {
	readonly kind: 'moment';
	readonly asks: 'stage' | 'used-up' | 'pull' | 'faster';
}

export type Task = PartsTask | MomentTask;

const slot = (form: FormId, ...ids: readonly string[]): Slot[] => ids.map((id) => ({ id, form }));

const LANYARD_PARTS: readonly (readonly [part: string, form: FormId])[] = [
	['hook', 'hook'],
	['seam', 'stitches'],
	['line', 'line'],
	['pack', 'pack'],
	['tag', 'tag']
];

export const TASKS: readonly Task[] = [
	{
		id: 'gear-harness',
		kind: 'gear',
		difficulty: 'easy',
		skills: ['inspection', 'harness'],
		version: 1,
		drawing: 'harness',
		slots: [
			...slot('webbing', 'shoulder-left', 'shoulder-right'),
			...slot('ring', 'back-ring'),
			...slot('buckle', 'chest-buckle'),
			...slot('tag', 'label'),
			...slot('stitches', 'stitch-left', 'stitch-right'),
			...slot('webbing', 'leg-left', 'leg-right')
		],
		counts: [14, 40, 31, 15],
		choice: 'use'
	},
	{
		id: 'gear-lanyards',
		kind: 'gear',
		difficulty: 'middle',
		skills: ['inspection', 'lanyard', 'absorber'],
		version: 1,
		drawing: 'lanyards',
		slots: ['first', 'second'].flatMap((one) => LANYARD_PARTS.map(([part, form]) => ({ id: `${one}-${part}`, form }))),
		counts: [7, 38, 35, 20],
		choice: 'of-two'
	},
	{
		id: 'gear-connectors',
		kind: 'gear',
		difficulty: 'middle',
		skills: ['inspection', 'connectors'],
		version: 1,
		drawing: 'connectors',
		slots: slot('hook', 'hook-1', 'hook-2', 'hook-3', 'hook-4', 'hook-5', 'hook-6'),
		counts: [8, 27, 35, 22, 8],
		choice: 'use'
	},
	{
		id: 'gear-worn-back',
		kind: 'gear',
		difficulty: 'middle',
		skills: ['donning', 'harness'],
		version: 1,
		drawing: 'worn-back',
		slots: [
			...slot('worn-shoulder', 'shoulder-left', 'shoulder-right'),
			...slot('worn-ring', 'back-ring'),
			...slot('worn-lanyard', 'lanyard-end'),
			...slot('worn-seat', 'seat-strap'),
			...slot('worn-leg', 'leg-left', 'leg-right')
		],
		counts: [14, 40, 31, 15],
		choice: 'wear'
	},
	{
		id: 'gear-worn-front',
		kind: 'gear',
		difficulty: 'easy',
		skills: ['donning', 'harness'],
		version: 1,
		drawing: 'worn-front',
		slots: [
			...slot('worn-shoulder', 'shoulder-left', 'shoulder-right'),
			...slot('worn-chest', 'chest-strap'),
			...slot('worn-buckle', 'leg-buckle-left', 'leg-buckle-right'),
			...slot('worn-leg', 'leg-left', 'leg-right'),
			...slot('worn-end', 'strap-end')
		],
		counts: [14, 40, 31, 15],
		choice: 'wear'
	},
	{
		id: 'gear-swatches',
		kind: 'gear',
		difficulty: 'hard',
		skills: ['inspection', 'webbing', 'stitching'],
		version: 1,
		drawing: 'swatches',
		slots: [...slot('webbing', 'strap-1', 'strap-2', 'strap-3', 'strap-4'), ...slot('stitches', 'seam-5', 'seam-6')],
		counts: [8, 27, 35, 22, 8],
		choice: 'use'
	},
	{
		id: 'site-roof-edge',
		kind: 'situation',
		difficulty: 'easy',
		skills: ['anchorage', 'edges', 'one-person', 'absorbers', 'rescue'],
		version: 1,
		drawing: 'roof-edge',
		slots: [
			...slot('anchorage', 'anchorage'),
			...slot('people', 'people'),
			...slot('packs', 'packs'),
			...slot('edge-line', 'edge-line'),
			...slot('rescue-post', 'rescue-post')
		],
		counts: [15, 38, 32, 15],
		choice: 'go'
	},
	{
		id: 'site-twin-legs',
		kind: 'situation',
		difficulty: 'hard',
		skills: ['twin-legs', 'absorbers', 'anchorage'],
		version: 1,
		drawing: 'twin-legs',
		slots: [
			...slot('leg-front', 'leg-front'),
			...slot('leg-back', 'leg-back'),
			...slot('leg-holding', 'leg-holding'),
			...slot('leg-spare', 'leg-spare'),
			...slot('packs', 'packs')
		],
		counts: [15, 38, 32, 15],
		choice: 'go'
	},
	{
		id: 'site-hook-ups',
		kind: 'situation',
		difficulty: 'middle',
		skills: ['connectors', 'anchorage', 'tie-back'],
		version: 1,
		drawing: 'hook-ups',
		slots: slot('hook-up', 'hook-up-1', 'hook-up-2', 'hook-up-3', 'hook-up-4', 'hook-up-5', 'hook-up-6'),
		counts: [6, 22, 36, 26, 10],
		choice: 'go'
	},
	{
		id: 'site-restraint',
		kind: 'situation',
		difficulty: 'middle',
		skills: ['restraint', 'anchorage', 'one-person'],
		version: 1,
		drawing: 'restraint',
		slots: [
			...slot('roof-side', 'side-north', 'side-east', 'side-south'),
			...slot('roof-hole', 'hole'),
			...slot('people', 'people'),
			...slot('anchorage', 'anchorage')
		],
		counts: [14, 38, 33, 15],
		choice: 'go'
	},
	{
		id: 'site-rescue',
		kind: 'situation',
		difficulty: 'easy',
		skills: ['rescue'],
		version: 1,
		drawing: 'rescue',
		slots: [
			...slot('rescue-names', 'names'),
			...slot('rescue-kit', 'kit'),
			...slot('rescue-helper', 'helper'),
			...slot('rescue-reach', 'reach'),
			...slot('rescue-way', 'way')
		],
		counts: [15, 38, 32, 15],
		choice: 'go'
	},
	{
		id: 'site-steel',
		kind: 'situation',
		difficulty: 'hard',
		skills: ['tie-back', 'anchorage', 'one-person', 'absorbers', 'edges'],
		version: 1,
		drawing: 'steel',
		slots: [
			...slot('beam-hold', 'hold-first', 'hold-second'),
			...slot('packs', 'packs-first', 'packs-second'),
			...slot('attachment', 'attachment-first', 'attachment-second')
		],
		counts: [12, 36, 34, 18],
		choice: 'go'
	},
	{
		id: 'moment-now',
		kind: 'moment',
		difficulty: 'easy',
		skills: ['stages', 'lengths'],
		version: 1,
		drawing: 'one-moment',
		asks: 'stage'
	},
	{
		id: 'moment-used-up',
		kind: 'moment',
		difficulty: 'middle',
		skills: ['lengths', 'stages'],
		version: 1,
		drawing: 'one-moment',
		asks: 'used-up'
	},
	{
		id: 'moment-pull',
		kind: 'moment',
		difficulty: 'middle',
		skills: ['force', 'speed', 'stages'],
		version: 1,
		drawing: 'moments',
		asks: 'pull'
	},
	{
		id: 'moment-faster',
		kind: 'moment',
		difficulty: 'hard',
		skills: ['speed', 'force'],
		version: 1,
		drawing: 'moments',
		asks: 'faster'
	}
];
