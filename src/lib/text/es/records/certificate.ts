import type * as en from '../../en/records/certificate.ts';
import { pluralOf } from '../../plural.ts';

const plural = pluralOf('es');

export const certificate: typeof en.certificate = {
	title: 'Certificado',
	headings: { whole: 'Certificado de capacitación', theory: 'Registro de capacitación en teoría', prior: 'Registro de capacitación previa, juzgada suficiente' },
	said: {
		whole: 'aprobó la prueba final de este curso e hizo la parte práctica delante de un instructor.',
		theory: 'aprobó la prueba final de este curso. La parte práctica aún no está firmada.',
		prior: 'se capacitó antes o en otra parte. El empleador juzgó suficiente esa capacitación.'
	},
	across: { revoked: 'ANULADO', theory: 'SOLO TEORÍA', expired: 'VENCIDO' },
	erased: 'Identidad borrada',
	number: ({ number }) => `Número personal ${number}`,
	before: ({ name }) => `En ese entonces: ${name}`,

	rows: {
		employer: 'Empleador',
		course: 'Curso',
		training: 'Capacitación',
		scope: 'Sistema',
		subjects: 'Temas',
		notCovered: 'No se trata',
		tables: 'Tablas de reglas y de práctica',
		language: 'Idioma',
		dates: 'Inicio y fin',
		trained: 'Día de la capacitación',
		judged: 'Juzgada suficiente el',
		check: 'Prueba final',
		passRule: 'Regla de aprobación',
		rates: 'Cuántas veces se aprueba',
		present: 'Instructor presente',
		handsOn: 'Parte práctica',
		basis: 'Base',
		valid: 'Válido hasta',
		document: 'Prueba vista (SHA-256)',
		revoked: 'Anulado'
	},
	courseVersion: ({ course, n }) => `${course}, versión ${String(n)}`,
	reviews: { original: 'textos originales', reviewed: 'textos revisados', draft: 'textos aún sin revisar por alguien del oficio' },
	languageState: ({ language, state }) => `${language}, ${state}`,
	fromTo: ({ from, to, zone }) => `${from}; ${to} (${zone})`,
	result: ({ right, asked, unsafe, tries }) =>
		`${String(right)} de ${plural(asked, { one: '1 respuesta bien', other: `${String(asked)} respuestas bien` })}, ${String(unsafe)} del lado peligroso; ${tries === 1 ? 'primer intento' : `intento ${String(tries)}`}`,
	rule: ({ rule, n, mark }) => `${rule}, versión ${String(n)}. ${mark}`,
	marks: { provisional: 'Su nota para aprobar es provisional.', judged: 'Un grupo de jueces fijó su nota.' },
	rates: ({ list }) => `De cada 100 trabajadores, aprueban uno de los intentos: ${list}`,
	rate: ({ right, passes }) => `aciertan ${right} de 100: ${passes}`,
	present: ({ name, how, place }) => `En ${place}: ${name}. Se supo quién era por: ${how}`,
	nobodyPresent: 'Nadie. La prueba final se hizo a solas.',
	handsOn: ({ day, place }) => `${day}, ${place}: se vieron los cinco puntos`,
	handsOnMissing: 'Aún sin firmar',
	basis: { own: 'Capacitación propia', prior: 'Capacitación previa o de otra parte' },
	dayUnknown: 'No se sabe',
	noDocument: 'Ninguna',
	noEnd: 'Sin fecha de fin',
	by: { law: 'por ley', employer: 'por regla del empleador', 'nothing-fixed': 'nada lo fija' },
	validUntil: ({ day, by }) => `${day}, ${by}`,
	revokedOn: ({ day }) => `El ${day}. Ya no cuenta.`,

	capacities: { 'competent-person': 'persona competente', 'qualified-person': 'persona calificada', employer: 'empleador' },
	signedAs: ({ as, day }) => `Firma electrónica del ${day}, como ${as}.`,
	signatureOf: ({ hash }) => `Sobre el registro ${hash}`,
	toSign: 'Instructor o empleador, a mano',

	verify: '¿Sigue siendo cierto? Escanee, o abra',
	codeIs: 'y escriba el código',
	qr: ({ address }) => `Código QR que lleva a ${address}`,
	tape: 'Una cinta, dibujada como adorno',
	chain: ({ entry, head, count }) => `Entrada ${entry} de los registros del empleador, que tenían ${count} entradas al imprimir esto el ${head}.`,
	entryHash: ({ hash }) => `Hash de la entrada: ${hash}`,
	headHash: ({ hash }) => `Hash de la última entrada: ${hash}`,
	claim: 'Se puede descubrir todo cambio posterior al último punto de control entregado.',
	noProof: 'No prueba que el programa esté aprobado. Donde la ley pide práctica, tampoco prueba que se hizo.',

	criteria: 'Se aprobó la prueba final del curso. Los números del lado peligroso se contaron aparte.',
	criteriaWhole: 'Se aprobó la prueba final del curso. Un instructor vio la parte práctica y firmó por ella.',
	score: 'Respuestas bien en la prueba final',
	evidenceCheck: 'Prueba final',
	evidenceAlone: ({ asked, digest }) => `${String(asked)} preguntas, sin nadie presente. SHA-256 de las respuestas: ${digest}`,
	evidencePresent: ({ asked, digest }) => `${String(asked)} preguntas, con un instructor presente. SHA-256 de las respuestas: ${digest}`,
	evidenceHandsOn: 'Parte práctica',
	evidenceSigned: ({ as, day, hash }) => `Firmada el ${day} como ${as}. SHA-256 de lo firmado: ${hash}`,
	evidenceChain: 'Entrada de los registros del empleador',
	evidenceEntry: ({ entry, hash }) => `Entrada ${entry}, hash ${hash}. Se puede descubrir todo cambio posterior al último punto de control entregado.`
};
