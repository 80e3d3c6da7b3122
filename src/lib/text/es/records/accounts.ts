import { pluralOf } from '../../plural.ts';
import type { accounts as english } from '../../en/records/accounts.ts';

const plural = pluralOf('es');

export const accounts: typeof english = {
	lead: 'Quién puede entrar aquí. La capacitación de cada persona está en la página de registros.',
	toList: 'Ingresar personas con una lista',
	toListLead: 'Altas, bajas y nombres nuevos de toda la organización entran con una sola lista.',
	staffHeading: ({ count }) => plural(count, { one: '1 instructor o empleador', other: `${String(count)} instructores y empleadores` }),
	learnersHeading: 'Trabajadores',
	learnersLead: 'Por nombre o número, o una parte. Los demás no se muestran aquí.',
	search: 'Buscar a una persona',
	searchButton: 'Buscar',
	found: ({ count, number }) => plural(count, { one: '1 persona encontrada', other: `${number} personas encontradas` }),
	none: 'Nadie tiene este nombre o número. Pruebe con una parte.',
	toRecord: ({ name }) => `Registro de ${name}`,
	pagesLabel: 'Partes de esta lista',
	page: ({ n, of }) => `Página ${n} de ${of}`,
	previous: 'Página anterior',
	next: 'Página siguiente'
};
