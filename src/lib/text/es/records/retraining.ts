import { pluralOf } from '../../plural.ts';
import type { retraining as english } from '../../en/records/retraining.ts';

const plural = pluralOf('es');

export const retraining: typeof english = {
	title: 'Repetir la capacitación',
	short: 'Repetir',
	lead: 'Quién debe capacitarse otra vez, y hasta cuándo.',
	people: ({ count }) => plural(count, { one: '1 persona', other: `${String(count)} personas` }),
	reasons: {
		expiry: 'la capacitación vence',
		'change-of-work': 'otro trabajo u otra obra',
		'change-of-gear-or-system': 'otro equipo u otro sistema',
		'seen-inadequate': 'se vio que no sabe lo necesario',
		incident: 'incidente',
		'yearly-review': 'revisión anual'
	},

	openHeading: 'Órdenes abiertas',
	none: 'No hay ninguna orden.',
	open: ({ people }) => `Se ordenó para ${people}.`,
	overdue: ({ count }) => plural(count, { one: 'Para 1 persona el día ya pasó.', other: `Para ${String(count)} personas el día ya pasó.` }),
	columns: { person: 'Persona', due: 'Hasta', reason: 'Motivo', state: 'Hecho hasta ahora' },
	late: 'con retraso',
	theoryDone: 'teoría aprobada, falta la firma',
	theoryOpen: 'teoría sin aprobar',
	pages: 'Páginas de la lista',
	page: ({ n, of }) => `Página ${String(n)} de ${String(of)}`,
	before: 'Página anterior',
	next: 'Página siguiente',

	formHeading: 'Ordenar que se repita',
	formLead: 'El curso se abre otra vez para cada persona. Lo que aprobó queda en el registro.',
	whom: 'Para quién',
	expired: 'Todos los que tienen la capacitación vencida',
	soon: 'Todos los que la tienen por vencer',
	crew: ({ name }) => `Cuadrilla: ${name}`,
	days: 'Por vencer: en cuántos días',
	daysHint: 'Solo para la capacitación por vencer.',
	reason: 'Motivo',
	atOnce: 'Tras un incidente, o si se vio que alguien no sabe lo necesario, la capacitación anterior deja de valer ya. Si no, vale hasta el último día.',
	due: 'Último día',
	dueHint: 'El último día para terminar a tiempo.',
	look: 'Ver para quién',

	confirmHeading: 'Usted va a ordenar',
	confirmRows: { whom: 'Para', people: 'Personas', reason: 'Motivo', due: 'Hasta' },
	withOpen: ({ count }) =>
		plural(count, { one: '1 ya tiene una orden abierta. Con esta, la capacitación empieza de nuevo.', other: `${String(count)} ya tienen una orden abierta. Con esta, la capacitación empieza de nuevo.` }),
	leftOut: 'Quien ya tiene una orden abierta queda fuera.',
	endsNow: 'Su capacitación anterior deja de valer hoy.',
	endsDue: 'Su capacitación anterior vale como mucho hasta el último día.',
	nobody: 'No hay nadie para quien ordenarla.',
	send: 'Ordenar que se repita',
	change: 'Cambiar algo',
	done: ({ people }) => `Se ordenó repetir la capacitación para ${people}.`,
	problems: {
		'no-whom': 'Elija para quién.',
		'no-reason': 'Elija un motivo.',
		'no-day': 'Escriba el último día.',
		'due-past': 'Ese día ya pasó. Escriba hoy o un día que venga.',
		'due-far': 'Ese día queda muy lejos. Escriba un día de los próximos cinco años.',
		'bad-days': 'Escriba un número de días de 1 a 365.',
		'too-many': 'Son muchas personas a la vez. Hágalo cuadrilla por cuadrilla.',
		changed: 'Algo cambió desde que miró, y no se ordenó nada. Mire otra vez y luego ordene.'
	}
};
