import type { ownRecord as english } from '../../en/records/own-record.ts';

export const ownRecord: typeof english = {
	title: 'Mi registro de capacitación',
	lead: ({ employer }) => `Su propia copia de lo que ${employer} guarda de su capacitación. La puede imprimir.`,
	link: 'Mi registro de capacitación',
	back: 'Volver al curso',
	print: 'Copia hecha el',

	standingHeading: 'Hoy',
	states: { current: 'al día', 'expires-soon': 'vence pronto', expired: 'vencido', 'in-training': 'en capacitación', never: 'sin empezar' },
	until: ({ day }) => `Vale hasta el ${day}, todo ese día.`,
	noEnd: 'No vence.',
	nothing: 'Todavía no hay ninguna capacitación en el registro.',

	orderedHeading: 'Tiene que repetir la capacitación',
	ordered: ({ day }) => `Tiene que repetir la capacitación. Termine antes de que acabe el ${day}.`,
	orderedLate: ({ day }) => `Tiene que repetir la capacitación. El plazo era hasta el ${day}.`,
	orderedHow: 'Las lecciones y la prueba final están abiertas otra vez. Luego un instructor firma la parte práctica.',
	why: ({ reason }) => `Motivo: ${reason}.`,
	reasons: {
		expiry: 'su capacitación vence',
		'change-of-work': 'cambia su trabajo o su obra',
		'change-of-gear-or-system': 'cambia su equipo o su sistema',
		'seen-inadequate': 'alguien vio que falta práctica',
		incident: 'hubo un incidente',
		'yearly-review': 'revisión anual'
	},

	theoryTitle: 'Registro de capacitación en teoría',
	wholeTitle: 'Registro de capacitación',
	priorTitle: 'Capacitación previa',
	rows: {
		person: 'Nombre',
		number: 'Número',
		employer: 'Empleador',
		course: 'Curso',
		scope: 'Sistema',
		passed: 'Teoría aprobada',
		rights: 'Prueba final',
		language: 'Idioma',
		validUntil: 'Vale hasta',
		supervision: 'Instructor en la prueba',
		signOff: 'Parte práctica',
		training: 'Capacitación',
		trained: 'Dada el',
		judged: 'Juzgada el',
		signer: 'Firma',
		place: 'En la cadena'
	},
	course: ({ title, version }) => `${title}, versión ${version}`,
	rights: ({ right, asked }) => `${right} de ${asked} bien`,
	supervised: 'hubo un instructor presente',
	alone: 'no hubo un instructor presente',
	missing: 'falta: un instructor firma lo que usted sabe hacer con sus manos',
	revoked: ({ day }) => `Se retiró el ${day}. Ya no cuenta.`,
	past: 'Es de antes de la última orden. Queda en el registro.',
	capacities: { 'competent-person': 'persona competente', 'qualified-person': 'persona calificada', employer: 'por el empleador' },
	erased: 'identidad borrada',
	notKnown: 'no se sabe',
	entry: ({ n }) => `entrada ${n}`,

	notCovered: 'No trata',
	certificate: 'Certificado (PDF)',
	credential: 'Credencial firmada',

	acknowledgeHeading: '¿Lo confirma?',
	acknowledge: 'Recibí esta capacitación. Sé qué trata y qué no trata.',
	acknowledgeNote: 'No tiene que confirmar. Su capacitación cuenta igual.',
	acknowledgeButton: 'Confirmar',
	acknowledged: ({ day }) => `Usted lo confirmó el ${day}.`,
	acknowledgedNow: 'Confirmado. Consta en el registro.',
	notThere: 'Este registro ya no está. No se confirmó nada.',

	chainHeading: 'Cómo ver que nada cambió',
	chain: ({ n }) => `Al hacer esta copia, la cadena de registros terminaba con la entrada ${n}. Su huella (SHA-256):`,
	chainClaim: 'Se pueden notar los cambios hechos después del último punto de control entregado.'
};
