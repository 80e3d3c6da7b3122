/**
 * How often the commoner right answers of a picture come up: whoever always gives such an answer is right as often.
 * @source counted over the seeds 0 to 1999 of each task; tests/unit/findings/shares.test.ts counts again
 */
import type { Picture } from './picture.ts';

/** Answers that come up at least once in twenty draws: what is to be marked and chosen, by task, with their share. */
const SHARES: Readonly<Record<string, Readonly<Record<string, number>>>> = {
	'gear-harness': {
		'use': 0.14,
		'back-ring take-out': 0.05
	},
	'gear-lanyards': {
		'both': 0.06
	},
	'gear-connectors': {
		'use': 0.08
	},
	'gear-worn-back': {
		'use': 0.14,
		'back-ring put-right': 0.05,
		'lanyard-end put-right': 0.05,
		'seat-strap put-right': 0.05
	},
	'gear-worn-front': {
		'use': 0.14,
		'strap-end put-right': 0.05,
		'chest-strap put-right': 0.05
	},
	'gear-swatches': {
		'use': 0.08,
		'strap-2 take-out': 0.05
	},
	'site-roof-edge': {
		'go-on': 0.15,
		'packs stop': 0.09,
		'rescue-post stop': 0.09,
		'people stop': 0.08,
		'edge-line stop': 0.07,
		'anchorage stop': 0.07
	},
	'site-twin-legs': {
		'go-on': 0.15,
		'leg-spare stop': 0.08,
		'leg-back stop': 0.08,
		'leg-front stop': 0.08,
		'leg-holding stop': 0.08,
		'packs stop': 0.08
	},
	'site-hook-ups': {
		'go-on': 0.06
	},
	'site-restraint': {
		'go-on': 0.14,
		'side-north stop': 0.07,
		'side-east stop': 0.06,
		'hole stop': 0.06,
		'side-south stop': 0.06,
		'people stop': 0.06,
		'anchorage stop': 0.06
	},
	'site-rescue': {
		'go-on': 0.15,
		'kit stop': 0.08,
		'names stop': 0.08,
		'helper stop': 0.08,
		'reach stop': 0.07,
		'way stop': 0.07
	},
	'site-steel': {
		'go-on': 0.13,
		'hold-first stop': 0.07,
		'attachment-second stop': 0.06,
		'hold-second stop': 0.06,
		'packs-second stop': 0.06,
		'attachment-first stop': 0.06,
		'packs-first stop': 0.06
	},
	'moment-now': {
		'free-fall free-fall': 0.31,
		'free-fall elongation stretch slowing': 0.3,
		'standing': 0.2,
		'free-fall elongation stretch hanging': 0.19
	},
	'moment-used-up': {
		'free-fall length-2': 0.21,
		'free-fall length-1': 0.13,
		'length-4': 0.1,
		'length-2': 0.1,
		'free-fall length-3': 0.09,
		'length-3': 0.09,
		'length-1': 0.09,
		'free-fall elongation stretch length-1': 0.09,
		'length-5': 0.07
	}
};

/** @reason the share of an answer that is not among the common ones is below one in twenty, mostly far below */
const RARE = 0.03;

/** @returns a key as the table writes it: the marks in the order of the parts, then the choice. */
export function answerKey({ marks, choice }: Pick<Picture['key'], 'marks' | 'choice'>): string {
	return [...marks, choice].join(' ');
}

/** @returns how likely somebody who knows only how often answers come up is right at this picture, 0 to 1. */
export function guessOf(picture: Picture): number {
	return SHARES[picture.id]?.[answerKey(picture.key)] ?? RARE;
}
