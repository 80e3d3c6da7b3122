import { pluralOf } from '../../plural.ts';
import type { listCheck as english } from '../../en/records/list-check.ts';

const plural = pluralOf('es');

export const listCheck: typeof english = {
	title: 'Quién de una lista está al día hoy',
	short: 'Consultar una lista',
	way: 'Quién de una lista de nombres o números está al día hoy.',
	back: 'Volver a todas las personas',
	lead: 'Pegue nombres o números y vea a quién le vale hoy la capacitación.',
	paste: 'Nombres o números, uno por línea',
	hint: ({ most }) => `También sirven líneas de una hoja de cálculo: nombre y número en una línea. Hasta ${most} líneas.`,
	button: 'Consultar',
	otherHeading: 'Consultar otra lista',
	summary: ({ n, of, day }) => `${n} de ${of} están al día hoy, ${day}.`,
	byLine: ({ name }) => `Según los registros de ${name}.`,
	repeated: ({ count }) => plural(count, { one: '1 línea estaba dos veces. Cuenta una vez.', other: `${String(count)} líneas ya estaban. Cada una cuenta una vez.` }),
	print: 'Para guardar la respuesta, imprima esta página.',
	notHeading: ({ count }) => `No están al día, o no está claro: ${String(count)}`,
	currentHeading: ({ count }) => `Al día hoy: ${String(count)}`,
	columns: { line: 'Línea', asked: 'En su lista', found: 'En los registros', until: 'Vale hasta' },
	captions: { not: 'Líneas que no están al día o no están claras', current: 'Líneas que están al día' },
	notFound: 'No aparece',
	notFoundWhat: 'Nadie tiene aquí este nombre ni este número.',
	several: ({ count }) => `${String(count)} personas tienen este nombre`,
	severalWhat: 'Pida el número.',
	more: ({ count }) => `y ${String(count)} más`,
	twoPeople: 'El nombre y el número no van juntos',
	refusals: {
		empty: 'Pegue al menos un nombre o un número.',
		'too-many': 'Esta lista tiene demasiadas líneas. Consúltela por partes.',
		'too-long': 'Esta lista es demasiado larga. Consúltela por partes.'
	}
};
