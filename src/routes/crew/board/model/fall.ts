/** The fall of a plan for the board, or why there is none to show: an entered plan may have no fall at all. */
import { analyse, simulate } from '#lib/arrest/index.ts';
import type { SiteModel } from '#lib/scene/index.ts';
import { playbackOf, type LearnerLevel, type ShownFall } from '../../../learn/problem/model/playback.ts';
import type { Writer } from '../../../learn/problem/model/writing.ts';
import { absenceText, refusalText, type BoardSpeech } from './speech.ts';

export type BoardFall = { readonly kind: 'shown'; readonly fall: ShownFall } | { readonly kind: 'none'; readonly why: string };

/** @returns the fall with the level that a number means, or in words why it cannot be shown. */
export function boardFall(speech: BoardSpeech, writer: Writer, site: SiteModel, level: LearnerLevel | undefined): BoardFall {
	try {
		const fall = playbackOf(speech, writer, site, level);
		return fall === undefined ? { kind: 'none', why: whyNone(speech) } : { kind: 'shown', fall };
	} catch (error) {
		// An absorber that does not run out, a lanyard without length: lengths that no drawn plan has.
		if (error instanceof RangeError) return { kind: 'none', why: speech.m.board.noFall };
		throw error;
	}
}

function whyNone(speech: BoardSpeech): string {
	const outcome = analyse(speech.problem.drawn.plan);
	if (outcome.kind === 'refused') return refusalText(speech) ?? '';
	const fall = simulate(outcome.analysis);
	if (fall.kind !== 'refused' || fall.refusal.why === 'no-finite-stop') return speech.m.board.noFall;
	return fall.refusal.why === 'outside-label' ? speech.m.page.noFall : absenceText(speech, fall.refusal);
}
