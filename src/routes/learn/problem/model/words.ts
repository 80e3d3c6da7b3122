/** Words for the components of the scene, from the catalogue. */
import { LENGTH, SPEED, TIME, toSI, unitSymbol, writeQuantity, type Language } from '#lib/quantity/index.ts';
import type { Scenario } from '#lib/scenario/index.ts';
import type { PlaybackWords } from '#lib/scene/index.ts';
import type { FirstMessages } from '#lib/text/index.ts';
import type { Speech } from './names.ts';
import { unitFor, type Writer } from './writing.ts';

/** Beside the scale bar, which is 2 m long, or 6 ft in US units. */
export function scaleText(m: FirstMessages, units: Scenario['units'], language: Language): string {
	const metric = units === 'metric';
	const bar = writeQuantity(toSI(metric ? 2 : 6, metric ? 'm' : 'ft'), { unit: metric ? 'm' : 'ft', decimals: 0, language: language });
	const unit = unitFor(units, LENGTH);
	return m.page.scale({ bar, unit: m.page.unitNames[unit === 'm' || unit === 'ft' || unit === 'ft-in' ? unit : 'm'] });
}

export function playbackWords(speech: Speech, writer: Writer, duration: number): PlaybackWords {
	const { m, problem, language } = speech;
	const us = problem.scenario.units !== 'metric';
	const speedUnit = unitSymbol(us ? 'ft/s' : 'm/s', language);
	const timeText = (t: number): string => writer.bare(t, TIME);
	const speedText = (speed: number): string => writer.bare(speed, SPEED);
	return {
		title: m.playback.drawing({ name: problem.drawn.person }),
		description: m.page.playbackText({ duration: writer.full(duration, TIME) }),
		rows: [m.playback.time({ unit: 's' }), m.playback.speed({ unit: speedUnit })],
		shortRows: ['s', speedUnit],
		timeText,
		speedText,
		spoken: (t, speed, events) =>
			m.playback.spoken({
				t: m.playback.spokenSeconds({ value: timeText(t) }),
				v: m.playback.spokenSpeed({ value: speedText(speed), us }),
				event: events.join(', ')
			}),
		play: m.playback.play,
		pause: m.playback.pause,
		nextMark: m.playback.nextMark,
		scrubber: m.playback.scrubber,
		cases: m.screen.cases,
		pace: m.page.pace,
		quarter: { short: m.page.quarterShort, spoken: m.playback.quarterSpeed },
		// What is seen is part of what is read out, so that it can be spoken to.
		full: { short: m.page.fullShort, spoken: `${m.page.fullShort}: ${m.playback.trueSpeed}` }
	};
}
