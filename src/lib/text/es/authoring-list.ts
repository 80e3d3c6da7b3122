import type { authoringImport as englishImport, authoringList as englishList } from '../en/authoring-list.ts';

export const authoringList: typeof englishList = {
	lead: 'Un escenario es un sitio con su historia. Cada problema que sale de él tiene otros números.',
	gone: 'El borrador ya no está, y el escenario tampoco.',

	ownHeading: 'Escenarios propios',
	none: 'Aún no hay ninguno. Cree uno nuevo o copie uno del curso.',
	untitled: 'Sin título',
	unpublished: 'Borrador, aún sin publicar',
	published: ({ version }) => `La versión ${version} está publicada`,
	changed: ({ version }) => `La versión ${version} está publicada, el borrador va más lejos`,
	retired: 'Fuera de uso',
	by: ({ name, day }) => `Lo creó ${name}, último cambio el ${day}`,
	notYours: 'Puede verlo y copiarlo.',

	makeHeading: 'Crear uno nuevo',
	makeLead: 'Usted empieza con un sitio sencillo que ya sirve. Cámbielo paso a paso hasta que sea el suyo.',
	makeButton: 'Crear un escenario nuevo',

	shippedHeading: 'Escenarios del curso',
	shippedLead: 'Tome una copia y cámbiela. El curso conserva el suyo.',
	site: ({ site, units }) => `${site}, ${units}`,
	unitsOf: { metric: 'metros', 'us-decimal': 'pies con decimales', 'us-inch': 'pies y pulgadas' },
	copy: 'Copiar',
	copyOf: ({ title }) => `Copiar: ${title}`,
	file: 'Guardar en un archivo',
	fileOf: ({ title }) => `Guardar en un archivo: ${title}`,

	full: ({ most }) => `Su organización tiene ${most} escenarios. No caben más. Descarte los borradores que nadie necesita.`
};

export const authoringImport: typeof englishImport = {
	heading: 'Traer uno de un archivo',
	lead: 'Tome un archivo que se guardó aquí, o con el mismo programa en otro lugar. Entra como borrador suyo.',
	file: 'Archivo',
	fileHint: 'Un escenario en JSON, de 64 kB como máximo.',
	paste: 'O su texto',
	button: 'Traerlo',

	refused: 'No entró nada.',
	why: {
		empty: 'No hay archivo ni texto. Elija un archivo o pegue su texto.',
		'too-long': 'Es demasiado largo para un escenario. Tome un archivo que tenga un solo escenario.',
		'not-utf-8': 'Los signos del archivo no se pueden leer. Guárdelo en UTF-8 y pruebe otra vez.',
		'not-json': 'Esto no es JSON. Tome el archivo como se guardó, o corríjalo en el lugar que se nombra abajo.',
		'not-one': 'Es JSON, pero no es un escenario. Tome un archivo que tenga un solo escenario.',
		form: 'La forma del archivo no es de fiar. Corríjala en el campo que se nombra abajo.',
		fields: 'Hay campos que no son válidos. Corríjalos en el texto o tome otro archivo.'
	},
	problemsHeading: 'Qué no es válido',
	problemsLead: 'Los nombres son los de los campos del archivo. El resto está en inglés.',
	mended: 'El texto está abajo. Ahí puede corregirlo.'
};
