import { pluralOf } from '../plural.ts';
import type { roster as english } from '../en/roster.ts';

const plural = pluralOf('es');

export const roster: typeof english = {
	title: 'Agregar personas con una lista',
	back: 'Volver a la cuadrilla',
	heading: 'Su lista',
	otherHeading: 'Ver otra lista',
	lead: 'Cada línea lleva un nombre y un número personal. Cópiela de una hoja de cálculo o elija un archivo. Ayuda una primera línea con títulos.',
	example: 'Nombre; Número\nDario Penn; C-117\nNadia Rook; C-118',
	paste: 'Pegue la lista aquí',
	file: 'O elija un archivo',
	fileHint: 'CSV o texto, como lo guarda una hoja de cálculo. Si elige un archivo, no se lee lo pegado.',
	lookButton: 'Ver la lista',
	foundHeading: 'Lo que haría esta lista',
	toAdd: ({ count }) => plural(count, { one: '1 persona por agregar', other: `${String(count)} personas por agregar` }),
	before: ({ count }) => plural(count, { one: '1 persona ya está en la lista', other: `${String(count)} personas ya están en la lista` }),
	wrong: ({ count }) => plural(count, { one: '1 línea con un problema', other: `${String(count)} líneas con un problema` }),
	wrongLead: 'Estas líneas van primero. Corríjalas en su lista y mírela de nuevo, o siga sin ellas.',
	confirmAll: 'Todavía no cambia nada.',
	confirmSome: 'Todavía no cambia nada. Las líneas con un problema quedan fuera.',
	nothingToAdd: 'No hay nadie por agregar.',
	enterButton: ({ count }) => plural(count, { one: 'Agregar a 1 persona', other: `Agregar a ${String(count)} personas` }),
	caption: 'Líneas de la lista',
	columns: { line: 'Línea', state: 'Qué pasa' },
	states: { new: 'se agrega', known: 'se agrega; ya la conocemos', 'on-list': 'ya está en la lista' },
	nothing: '(nada)',
	missing: { name: 'Falta el nombre. Escriba nombre y apellido.', number: 'Falta el número. Escriba el número personal.' },
	twice: ({ n }) => `Este número está también en la línea ${String(n)}. Deje uno de los dos.`,
	tooLong: { name: 'El nombre es muy largo. Acórtelo.', number: 'El número es muy largo. Acórtelo.' },
	openQuote: ({ n }) => `En la línea ${String(n)} falta cerrar unas comillas. Quítelas o ciérrelas.`,
	refusals: {
		empty: 'No hay nada en esta lista. Pegue líneas con nombre y número, o elija un archivo.',
		'too-long': 'La lista es muy larga. Pártala en listas de 1000 personas como máximo.',
		'too-many': 'La lista tiene más de 1000 personas. Pártala en varias.',
		'one-column': 'Solo se ve una columna. Separe nombre y número con coma, punto y coma o tabulador.',
		'not-text': 'Este archivo no es de texto. Guarde la lista como CSV en la hoja de cálculo, o copie las celdas y péguelas.',
		archived: 'Esta cuadrilla está guardada. Primero retómela.'
	}
};
