/** How pictures write their numbers: with their unit, in the units of the organisation. */
import { writeQuantity, type Language } from '#lib/quantity/index.ts';
import type { FindingFormats } from '#lib/scene/index.ts';

export function formatsFor(units: 'metric' | 'us', language: Language): FindingFormats {
	const us = units === 'us';
	return {
		length: (metres) => writeQuantity(metres, { unit: us ? 'ft' : 'm', language, decimals: us ? 1 : 2 }),
		time: (seconds) => writeQuantity(seconds, { unit: 's', language, decimals: 2 }),
		speed: (speed) => writeQuantity(speed, { unit: us ? 'ft/s' : 'm/s', language, decimals: 1 }),
		number: (value) => new Intl.NumberFormat(language).format(value)
	};
}
