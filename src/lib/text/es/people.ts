import type { people as en } from '../en/people.ts';
import { account } from './account.ts';

export const people: typeof en = {
	...account,

	/* Entrar. */
	signInLead: 'Practicar está abierto a todos. Entre para ver su curso y su registro.',
	workers: 'Trabajadores',
	workersLead: 'Con su número personal y su PIN.',
	staff: 'Instructores y empleadores',
	number: 'Número personal',
	numberHint: 'El número con que lo conoce su empleador.',
	pin: 'PIN',
	pinHint: 'Seis dígitos.',
	crewCode: 'Código de cuadrilla',
	crewCodeHint: 'Aquí más de un empleador usa este número. El código de su cuadrilla dice cuál es el suyo.',
	email: 'Correo electrónico',
	password: 'Contraseña',
	signInButton: 'Entrar',
	notJoined: '¿Es nuevo aquí? Únase a su cuadrilla',
	ended: 'Entre para abrir esta página. Si ya había entrado, eso terminó.',
	refusedLearner: 'Este número y este PIN no van juntos, o hubo ya muchos intentos. Su instructor le puede dar un PIN nuevo.',
	refusedStaff: 'Este correo y esta contraseña no van juntos, o hubo ya muchos intentos. Su empleador le puede dar un código nuevo.',
	wait: ({ count }) => (count === 1 ? 'Intente otra vez en 1 segundo.' : `Intente otra vez en ${count} segundos.`),

	/* Crear. */
	setUpTitle: 'Cree su organización',
	setUpLead: 'El código está donde se inició el servidor. Sirve una vez.',
	setUpCode: 'Código de inicio',
	organisationHeading: 'La organización',
	organisationName: 'Nombre de la organización',
	rules: 'Tabla de reglas',
	rulesHint: 'La ley de la que habla el curso.',
	ruleTable: ({ place, scope }) => `${place}: ${scope}`,
	units: 'Unidades',
	unitSystems: { metric: 'Metros y kilogramos', us: 'Pies y libras' },
	language: 'Idioma',
	languageHint: 'Para quienes no eligieron ninguno.',
	zone: 'Zona horaria',
	zoneHint: 'La de las obras. Con ella se cuentan los días.',
	passRule: 'Regla para aprobar la prueba final',
	passRules: {
		staged: 'Por etapas: de 12 a 30 preguntas',
		'fixed-24': 'De un solo largo: 24 preguntas',
		'staged-long': 'Por etapas más largas: de 18 a 36 preguntas'
	},
	yourselfHeading: 'Usted',
	yourName: 'Su nombre',
	newPassword: 'Contraseña',
	passwordHint: ({ count }) => `Al menos ${count} caracteres. Unas palabras seguidas sirven bien.`,
	setUpButton: 'Crear',

	/* Darse de alta. */
	enrolTitle: 'Elija su contraseña',
	enrolLead: 'El código se lo dio su empleador. Sirve una vez.',
	enrolCode: 'Código',
	enrolButton: 'Guardar mi contraseña',

	/* Las páginas del empleador. */
	records: 'Registros',
	settings: 'Ajustes de la organización',
	settingsLead: 'Valen desde ahora para todas las cuadrillas.',
	crews: 'Cuadrillas',
	save: 'Guardar',
	saved: 'Guardado.',
	inviteHeading: 'Invite a un instructor o empleador',
	inviteLead: 'Usted recibe un código para esa persona. Con él elige su contraseña.',
	inviteName: 'Nombre',
	role: 'Papel',
	roles: { learner: 'Trabajador', trainer: 'Instructor', employer: 'Empleador' },
	inviteButton: 'Crear un código',
	codeHeading: ({ name }) => `Código para ${name}`,
	codeLead: 'Se muestra una sola vez y vale siete días. Délo en mano o de voz.',
	codeWhere: ({ path }) => `Se escribe en la página ${path} de este sitio.`,
	pinReset: ({ name }) => `${name} ya puede elegir otro PIN. Para eso entra una vez más con el código de su cuadrilla.`,
	unlocked: ({ name }) => `${name} puede intentar entrar otra vez.`,
	closed: ({ name }) => `${name} se dio de baja y ya no puede entrar.`,
	columns: { name: 'Nombre', role: 'Papel', signsInWith: 'Entra con', state: 'Estado' },
	states: {
		active: 'puede entrar',
		invited: 'aún no elige su clave',
		locked: 'bloqueado por muchos intentos',
		closed: 'dado de baja'
	},
	you: 'usted',
	resetStaff: 'Otro código',
	resetLearner: 'Otro PIN',
	resetStaffOf: ({ name }) => `Otro código para ${name}`,
	resetLearnerOf: ({ name }) => `Otro PIN para ${name}`,
	unlock: 'Desbloquear',
	unlockOf: ({ name }) => `Desbloquear a ${name}`,
	close: 'Dar de baja',
	closeOf: ({ name }) => `Dar de baja a ${name}`,
	nobody: 'desconocido',

	/* Lo que falta en un campo. */
	problems: {
		missing: 'Llene este campo.',
		'too-long': 'Es demasiado largo.',
		'not-a-name': 'Escriba un nombre con letras.',
		'not-a-number': 'Escriba letras y dígitos, sin espacios.',
		'not-an-email': 'Escriba un correo, como nombre@example.org.',
		'not-listed': 'Elija uno de la lista.',
		'password-short': 'Es demasiado corta.',
		'password-weak': 'Es muy fácil de adivinar. Mezcle palabras distintas.',
		code: 'Este código no existe, ya se usó o ya venció.',
		'email-taken': 'Alguien aquí ya tiene este correo.'
	},
	problemsTitle: 'Falta algo o algo no es válido. Mire los campos marcados.'
};
