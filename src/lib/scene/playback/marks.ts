/** At which instants the figure stands in the strip. Seconds. */
import type { PlaybackCase, PlaybackEvent } from '../model.ts';

export interface Mark {
	readonly t: number;
	/** Events at this instant; none at the regular marks between. */
	readonly events: readonly PlaybackEvent[];
	/** Whether the figure stands here; where the learner's level is passed only a diamond does. */
	readonly figure: boolean;
}

/** Events nearer than this are one instant in the picture. */
const SAME = 0.0005;

/**
 * Every event, and regular marks between them where they are not crowded: a regular mark keeps half a step
 * from every event.
 */
export function marksOf(fall: Pick<PlaybackCase, 'duration' | 'events'>, step: number): Mark[] {
	const passing = fall.events.filter((e) => e.id === 'passes-learner-level');
	const rest = fall.events.filter((e) => e.id !== 'passes-learner-level');
	const marks: Mark[] = withRegular(rest, fall.duration, step).map((m) => ({ ...m, figure: true }));
	for (const event of passing) {
		const at = marks.findIndex((m) => Math.abs(m.t - event.t) < SAME);
		const same = marks[at];
		if (same === undefined) marks.push({ t: event.t, events: [event], figure: false });
		else marks[at] = { ...same, events: [...same.events, event] };
	}
	return marks.sort((a, b) => a.t - b.t);
}

function withRegular(events: readonly PlaybackEvent[], duration: number, step: number): { t: number; events: PlaybackEvent[] }[] {
	const marks: { t: number; events: PlaybackEvent[] }[] = [];
	for (const event of [...events].sort((a, b) => a.t - b.t)) {
		const last = marks[marks.length - 1];
		if (last !== undefined && event.t - last.t < SAME) last.events.push(event);
		else marks.push({ t: event.t, events: [event] });
	}
	if (!marks.some((m) => m.t < SAME)) marks.unshift({ t: 0, events: [] });
	if (!marks.some((m) => duration - m.t < SAME)) marks.push({ t: duration, events: [] });
	const fixed = marks.map((m) => m.t);
	for (let i = 1; i * step < duration; i++) {
		const t = Math.round(i * step * 1000) / 1000;
		if (fixed.every((f) => Math.abs(f - t) > step * 0.5)) marks.push({ t, events: [] });
	}
	// A long stretch between two events without a regular mark gets one in its middle.
	const sorted = marks.sort((a, b) => a.t - b.t);
	const out: { t: number; events: PlaybackEvent[] }[] = [];
	for (const m of sorted) {
		const last = out[out.length - 1];
		if (last !== undefined && m.t - last.t > step * 1.3) out.push({ t: (m.t + last.t) / 2, events: [] });
		out.push(m);
	}
	return out;
}
