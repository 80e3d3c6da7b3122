/** Where a drawn problem came from: what is kept with every answer, so that it can be drawn and explained again. */
import { PICTURE_DRAW_VERSION, type Picture, type PictureKey } from '#lib/findings/index.ts';
import type { Problem } from '#lib/scenario/index.ts';
import { SLIP_SET_VERSION } from '#lib/slips/index.ts';
import { ENGINE_VERSION } from '../attempts/receive.ts';

/** The drawn values, and what they were drawn from. */
export interface Evidence {
	readonly origin: Readonly<Record<string, string | number>>;
	readonly drawn: unknown;
	/** Of a picture: what its answer is marked by. Answers from before it was kept have none. */
	readonly key?: MarkingKey;
}

/** What of a picture's key its answer is marked by. */
export type MarkingKey = Pick<PictureKey, 'marks' | 'choice' | 'criticalChoices' | 'criticalMarks'>;

/** @returns the evidence of a site problem. */
export function siteEvidence(problem: Problem): Evidence {
	const { scenario, drawVersion, seed, acceptedTry, drawn } = problem;
	return {
		origin: { scenario: scenario.id, version: scenario.version, drawVersion, slipSetVersion: SLIP_SET_VERSION, engineVersion: ENGINE_VERSION, seed, acceptedTry },
		drawn
	};
}

/** @returns the evidence of a picture. */
export function pictureEvidence(picture: Picture): Evidence {
	const { id, version, seed, shown, key } = picture;
	const { marks, choice, criticalChoices, criticalMarks } = key;
	return { origin: { picture: id, version, drawVersion: PICTURE_DRAW_VERSION, seed }, drawn: shown, key: { marks, choice, criticalChoices, criticalMarks } };
}
