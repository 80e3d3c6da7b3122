import type { signOff as english } from '../en/sign-off.ts';

export const signOff: typeof english = {
	title: 'Firma de la parte práctica',
	back: 'Volver a la cuadrilla',
	link: 'Firmar la parte práctica',
	lead: 'Usted vio a esta persona trabajar con equipo real. Su firma lo dice.',
	theoryAgain: ({ day }) => `Hay orden de repetir la capacitación, hasta el ${day}. Todavía no aprobó otra vez la prueba final.`,
	retrainingDue: ({ day }) => `repetir hasta el ${day}`,
	theoryNone: 'Todavía no aprobó la prueba final de la teoría.',
	theory: ({ day }) => `Aprobó la prueba final de la teoría el ${day}, con un instructor presente.`,
	theoryAlone: ({ day }) => `Aprobó la prueba final de la teoría el ${day}. No había un instructor presente.`,
	beforeHeading: 'Firmas anteriores',
	before: ({ day, place, name, as }) => `${day}, ${place}. Firma ${name}, ${as}.`,
	broken: 'Este registro y su firma ya no van juntos.',
	erased: 'identidad borrada',
	revoked: 'Esta firma ya no cuenta.',
	formHeading: 'Lo que usted vio',
	checksLead: 'Marque lo que la persona hizo delante de usted. Hacen falta los cinco puntos.',
	checks: {
		inspection: 'Revisó el arnés, la cuerda y los conectores antes del uso, y apartó el equipo malo.',
		donning: 'Se puso el arnés y lo ajustó.',
		connecting: 'Conectó a la argolla D y al anclaje, y revisó cada conector.',
		'anchorage-choice': 'Eligió un anclaje en el sitio y dijo por qué.',
		'rescue-plan': 'Sabe el plan de rescate de este sitio: quién viene y con qué.'
	},
	day: 'Día',
	dayHint: 'El día en que usted lo vio.',
	capacity: 'Usted firma como',
	capacities: { 'competent-person': 'persona competente', 'qualified-person': 'persona calificada' },
	capacityHint: 'Como lo nombró su empleador según la ley que vale aquí.',
	readButton: 'Leer lo que firma',
	readHeading: 'Usted va a firmar',
	meaning: ({ as, what }) =>
		`Yo estaba allí. Vi a esta persona hacer los cinco puntos, en el día y el lugar que constan aquí. Se trata de: ${what}. Firmo como ${as}.`,
	readLead: 'Su firma no se puede retirar. Un error se corrige con una firma nueva.',
	rows: { person: 'Persona', checks: 'Visto', place: 'Lugar', day: 'Día', theory: 'Teoría', hash: 'Registro (SHA-256)', signer: 'Firma' },
	password: 'Su contraseña otra vez',
	signButton: 'Firmar',
	change: 'Cambiar algo',
	done: 'La parte práctica está firmada.',
	problems: {
		'all-checks': 'Marque los cinco puntos. Lo que no vio no se puede firmar.',
		'no-day': 'Escriba el día.',
		'day-to-come': 'Ese día todavía no llega. Escriba el día en que lo vio.',
		'no-capacity': 'Elija cómo firma.',
		changed: 'Algo cambió desde que lo leyó. Léalo otra vez y firme.',
		'wrong-password': 'Esta no es su contraseña.',
		locked: 'Su cuenta está bloqueada por muchas contraseñas malas. Pida a su empleador que la abra.'
	}
};
