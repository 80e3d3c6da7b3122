import { pluralOf } from '../../plural.ts';
import type { rosterAll as english } from '../../en/records/roster-all.ts';
import { roster } from '../roster.ts';

const plural = pluralOf('es');

export const rosterAll: typeof english = {
	title: 'Personas con una lista',
	lead: 'Ingrese a toda la organización de una vez. La misma lista puede volver: solo cambia lo que es distinto.',
	back: 'Volver a las cuentas',
	heading: roster.heading,
	otherHeading: roster.otherHeading,
	listLead: 'Cada línea lleva un nombre y un número personal, y una cuadrilla si quiere. Cópiela de una hoja de cálculo o elija un archivo. Ayuda una primera línea con títulos.',
	numberLead: 'El número dice de quién se trata. Si un número conocido trae otro nombre, el nombre cambia. El anterior queda en los registros viejos.',
	example: 'Nombre; Número; Cuadrilla\nDario Penn; C-117; Puentes Norte\nNadia Rook; C-118; Puentes Norte',
	paste: roster.paste,
	file: roster.file,
	fileHint: roster.fileHint,
	lookButton: roster.lookButton,
	foundHeading: roster.foundHeading,
	added: ({ count }) => plural(count, { one: '1 persona nueva', other: `${String(count)} personas nuevas` }),
	changed: ({ count }) => plural(count, { one: '1 persona cambia', other: `${String(count)} personas cambian` }),
	unchanged: ({ count }) => plural(count, { one: '1 persona queda igual', other: `${String(count)} personas quedan igual` }),
	wrong: roster.wrong,
	wrongLead: roster.wrongLead,
	caption: roster.caption,
	columns: { line: 'Línea', name: 'Nombre', number: 'Número', crew: 'Cuadrilla', happens: 'Qué pasa' },
	empty: roster.nothing,
	happens: {
		isNew: 'es nueva',
		unchanged: 'queda igual',
		renamed: ({ name }) => `nombre nuevo; hasta ahora ${name}`,
		stranger: 'Ninguna palabra del nombre coincide. Revise el número.',
		returns: 'vuelve después de una baja',
		joins: ({ name }) => `entra en ${name}`,
		moves: ({ first, second }) => `pasa de ${first} a ${second}`,
		made: 'se crea esta cuadrilla'
	},
	missing: roster.missing,
	tooLong: roster.tooLong,
	crewTooLong: 'El nombre de la cuadrilla es muy largo. Acórtelo.',
	crewNoName: 'Esto no puede ser el nombre de una cuadrilla. Escriba letras o cifras.',
	twice: roster.twice,
	problems: {
		'number-of-staff': 'Un instructor o un empleador tiene este número. Ponga otro.',
		'crew-unclear': 'Más de una cuadrilla se llama así. Primero cambie un nombre.',
		'crew-put-away': 'Esta cuadrilla está guardada. Primero retómela, o ponga otra.'
	},
	openQuote: roster.openQuote,
	missingHeading: ({ count }) => plural(count, { one: '1 persona no está en esta lista', other: `${String(count)} personas no están en esta lista` }),
	missingLead: 'Quedan como están, salvo que marque la casilla de abajo.',
	tooMany: 'Son demasiadas para darlas de baja con una lista. ¿Están todos en ella?',
	wrongFirst: 'No se puede dar de baja a nadie mientras una línea tenga un problema.',
	leave: ({ count }) => plural(count, { one: 'Esta persona se fue', other: `Estas ${String(count)} personas se fueron` }),
	leaveDetail: 'Se cierra su sesión y salen de las listas de siempre. Sus registros quedan.',
	confirmAll: roster.confirmAll,
	confirmSome: roster.confirmSome,
	enterButton: 'Ingresar esta lista',
	nothing: 'Esta lista no cambia nada.',
	done: ({ added, changed, gone }) => `Listo. Personas nuevas: ${String(added)}. Con cambios: ${String(changed)}. De baja: ${String(gone)}.`,
	refusals: {
		empty: roster.refusals.empty,
		'too-long': roster.refusals['too-long'],
		'too-many': roster.refusals['too-many'],
		'one-column': roster.refusals['one-column'],
		'not-text': roster.refusals['not-text'],
		changed: 'Algo cambió desde que miró la lista. No se ingresó nada: mírela otra vez.',
		'cannot-leave': 'Con esta lista no se puede dar de baja a nadie. No se ingresó nada.'
	}
};
