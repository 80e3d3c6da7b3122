import { pluralOf } from '../../plural.ts';
import type { training as english } from '../../en/records/training.ts';

const plural = pluralOf('es');

export const training: typeof english = {
	title: 'Quién está capacitado hoy',
	short: 'Quién está capacitado',
	accounts: 'Cuentas',
	organisation: 'Organización',
	line: ({ day, count, number }) => `${day}. ${plural(count, { one: '1 persona', other: `${number} personas` })}.`,
	found: ({ day, count, number }) => `${day}. ${plural(count, { one: '1 persona coincide', other: `${number} personas coinciden` })} con lo que pidió.`,
	search: 'Nombre, número o cuadrilla',
	crew: 'Cuadrilla',
	allCrews: 'Todas las cuadrillas',
	sort: 'Orden',
	sorts: { until: 'Lo que vence primero', name: 'Nombre', state: 'Estado' },
	show: 'Mostrar',
	again: 'Mostrar a todos otra vez',
	filtersLabel: 'Por estado',
	filters: { all: 'Todos', left: 'Se fueron' },
	states: {
		current: 'Al día',
		'expires-soon': 'Vence pronto',
		expired: 'Vencido',
		'in-training': 'En capacitación',
		never: 'Sin capacitación'
	},
	caption: 'Personas y cómo está su capacitación',
	columns: { name: 'Nombre', number: 'Número', crews: 'Cuadrillas', state: 'Estado', until: 'Vale hasta', remark: 'Lo que hay que saber' },
	erased: 'Identidad borrada',
	noDay: '–',
	noEnd: 'Sin fin fijo',
	remarks: {
		left: 'se fue',
		daysLeft: ({ count }) => plural(count, { one: 'queda 1 día', other: `quedan ${String(count)} días` }),
		daysAgo: ({ count }) => plural(count, { one: 'hace 1 día', other: `hace ${String(count)} días` }),
		monthsLeft: ({ count }) => plural(count, { one: 'queda 1 mes', other: `quedan ${String(count)} meses` }),
		monthsAgo: ({ count }) => plural(count, { one: 'hace 1 mes', other: `hace ${String(count)} meses` }),
		lastDay: 'hoy es el último día',
		noEnd: 'sin fin fijo',
		retrainingDue: ({ day }) => `repetir antes del fin del ${day}`,
		signOffMissing: 'falta la firma práctica',
		revoked: 'registro anulado',
		lessons: ({ n, of }) => `${String(n)} de ${String(of)} lecciones`,
		notBegun: 'sin empezar'
	},
	none: 'Todavía no hay nadie en los registros. Agregue primero personas a una cuadrilla.',
	noneFits: 'Nadie coincide con lo que pidió.',
	pagesLabel: 'Partes de esta lista',
	page: ({ n, of }) => `Página ${n} de ${of}`,
	previous: 'Página anterior',
	next: 'Página siguiente'
};
