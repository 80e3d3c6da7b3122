import { pluralOf } from '../../plural.ts';
import type { recordLaw as english } from '../../en/records/record-law.ts';

const plural = pluralOf('es');

export const recordLaw: typeof english = {
	months: ({ count }) => plural(count, { one: '1 mes', other: `${String(count)} meses` }),
	period: ({ months }) => `Según la ley de aquí, la capacitación vale ${months}.`,
	noPeriod: 'La ley de aquí no fija un plazo.',
	source: ({ clause, title }) => `${title}: ${clause}`,
	fromMemory: 'De memoria. Véalo en la propia ley.',
	notProofOf: {
		'approved-programme': 'La ley de aquí pide un curso que la autoridad haya aprobado. Este registro no lo prueba.',
		practice: 'La ley de aquí pide práctica con equipo real. La teoría sola no la prueba.'
	}
};
