import { pluralOf } from '../plural.ts';
import type { passRules as en } from '../en/pass-rules.ts';

const plural = pluralOf('es');

export const passRules: typeof en = {
	title: 'Regla para aprobar la prueba final',
	lead: 'La regla dice cuántas preguntas se hacen y con cuántos errores se aprueba. Una prueba que empezó sigue con su regla.',
	toPage: 'Ver la regla para aprobar, o cambiarla',
	now: ({ rule }) => `En uso: ${rule}.`,
	ownName: ({ from }) => `Su regla propia, hecha de «${from}»`,
	version: ({ n }) => `Versión ${String(n)}`,
	inUse: 'En uso',

	stage: ({ after, pass, fail }) => {
		const errors = pass === 0 ? 'sin errores' : plural(pass, { one: 'con 1 error a lo más', other: `con ${String(pass)} errores a lo más` });
		const passes = `Tras ${String(after)} preguntas: se aprueba ${errors}`;
		return fail === undefined ? `${passes}.` : `${passes}, se reprueba con ${String(fail)} o más.`;
	},
	between: 'En medio, la prueba sigue con más preguntas.',
	last: 'Con más errores al final, se reprueba.',
	unsafe: ({ first, items, inAll }) =>
		`Los números del lado peligroso se cuentan aparte. Se aceptan ${String(first)} en las primeras ${String(items)} preguntas, y ${String(inAll)} en total.`,
	plan: ({ extra }) => `Quien se amarra en un plan que no cumple recibe ${String(extra)} planes más de ese tipo. Si lo hace otra vez, reprueba.`,
	cell: ({ extra }) => `Un error trae ${plural(extra, { one: 'una pregunta más', other: `${String(extra)} preguntas más` })} de su lección. Si también falla, hay que hacer de nuevo la lección.`,
	tries: ({ tries, day }) => `Hay ${plural(tries, { one: 'un intento', other: `${String(tries)} intentos` })}, ${String(day)} por día a lo más. Luego un instructor desbloquea la prueba.`,

	provisional: 'La nota para aprobar es provisional. Aún no la fijó un grupo de jueces.',
	judged: ({ date, names }) => `Un grupo de jueces fijó la nota el ${date}: ${names}.`,
	document: ({ document }) => `Está escrito en: ${document}.`,

	ratesHeading: 'Con qué frecuencia se aprueba',
	caption: ({ right, passes, tries }) =>
		`De 100 personas que aciertan ${String(right)} veces de 100, ${passes} aprueban ${tries === 1 ? 'el único intento' : `uno de ${String(tries)} intentos`}.`,
	fewer: ({ than }) => `menos de ${than}`,
	worker: 'Acierta en',
	workerIs: ({ right }) => `${String(right)} de 100`,
	first: 'Aprueban el primer intento',
	allowed: ({ tries }) => (tries === 1 ? 'Aprueban el único intento' : `Aprueban uno de ${String(tries)} intentos`),
	items: 'Preguntas por intento',
	ratesNote: 'De 100 personas cada vez. La mitad de sus errores son del lado peligroso. Las preguntas son un promedio.',
	more: 'Personas que se equivocan de otra forma',
	moreLead: 'Los errores del lado peligroso cuentan doble. Los errores en grupo vienen de días buenos y malos: un error hace más fácil el otro.',
	firstCaption: 'Aprueban el primer intento, de 100 personas cada vez',
	allowedCaption: ({ tries }) => (tries === 1 ? 'Aprueban el único intento, de 100 personas cada vez' : `Aprueban uno de ${String(tries)} intentos, de 100 personas cada vez`),
	noneUnsafe: 'Ningún error peligroso',
	halfUnsafe: 'La mitad peligrosos',
	allUnsafe: 'Todos peligrosos',
	clustered: 'La mitad peligrosos, en grupo',
	floor: ({ right, most }) => `No se guarda ninguna regla que deje pasar a más de ${String(most)} de 100 personas que solo aciertan ${String(right)} veces de 100.`,

	choose: 'Usar esta regla',
	chooseOf: ({ rule }) => `Usar esta regla: ${rule}`,
	change: 'Cambiar sus números',
	changeOf: ({ rule }) => `Cambiar los números de: ${rule}`,
	review: 'Registrar una revisión de jueces',
	reviewOf: ({ rule }) => `Registrar una revisión de jueces de: ${rule}`,

	makeHeading: ({ from }) => `Una regla propia a partir de «${from}»`,
	makeLead: 'Solo cambian los números. Las preguntas y sus lecciones quedan. Al guardar se crea una versión nueva, y se usa desde entonces.',
	stageHeading: ({ after }) => `Tras ${String(after)} preguntas`,
	passAtMost: 'Se aprueba con tantos errores a lo más',
	failAtLeast: 'Se reprueba desde tantos errores',
	failHint: 'Déjelo vacío si aquí no se reprueba.',
	unsafeHeading: 'Números del lado peligroso',
	unsafeFirst: ({ items }) => `A lo más, en las primeras ${String(items)} preguntas`,
	unsafeInAll: 'A lo más, en toda la prueba',
	triesHeading: 'Intentos',
	triesField: 'Antes de que un instructor desbloquee',
	triesADay: 'En un día',
	save: 'Guardar y usar esta regla',
	cancel: 'Dejarla como está',
	laxTitle: 'Con esta regla se aprueba con demasiada facilidad. No se guardó.',
	lax: ({ right, rate, most }) => `Dejaría pasar a ${rate} de 100 personas que solo aciertan ${String(right)} veces de 100. A lo más pueden pasar ${most}.`,
	remediesLead: 'Cada uno de estos cambios basta por sí solo:',
	remedy: {
		tries: ({ to, rate }) => `${plural(to, { one: 'Un intento', other: `${String(to)} intentos` })} antes de que un instructor desbloquee. Así pasan ${rate} de 100.`,
		pass: ({ to, rate, after }) => `Tras ${String(after)} preguntas, aprobar con ${plural(to, { one: '1 error', other: `${String(to)} errores` })} a lo más. Así pasan ${rate} de 100.`,
		unsafe: ({ to, rate }) => `${plural(to, { one: '1 número', other: `${String(to)} números` })} del lado peligroso a lo más en toda la prueba. Así pasan ${rate} de 100.`
	},
	noRemedy: 'Ningún cambio basta por sí solo. Baje varios números, o empiece de nuevo desde otra regla.',

	reviewHeading: ({ rule, version }) => `Revisión de jueces: ${rule}, versión ${String(version)}`,
	reviewLead: 'Personas competentes miraron las preguntas y fijaron qué resultados aprueban. Lo que se registra aquí queda y no se puede cambiar.',
	date: 'Día de la revisión',
	judges: 'Nombres de los jueces',
	judgesHint: 'Un nombre en cada línea, al menos tres.',
	documentField: 'Dónde está escrito',
	documentHint: 'Por ejemplo el número del acta, y dónde se guarda.',
	enter: 'Registrar la revisión',

	done: {
		chosen: 'La regla está en uso desde ahora.',
		made: 'Su regla está guardada, y en uso desde ahora.',
		reviewed: 'La revisión está registrada. Las pruebas nuevas dicen quién fijó la nota.'
	},
	problems: {
		count: 'Escriba un número entero.',
		'pass-too-many': 'Son demasiados. Deje pasar menos errores.',
		'fail-too-few': 'Así no queda nada en medio. Ponga al menos dos más que para aprobar.',
		'unsafe-first-too-many': 'Son más que en toda la prueba. Ponga a lo más ese número.',
		'tries-too-many': 'Ponga al menos 1 intento, y a lo más 10.',
		'tries-a-day-too-many': 'Ponga al menos 1 intento, y no más que antes de que un instructor desbloquee.',
		cells: 'Esta regla deja fuera una lección del curso. Empiece de nuevo desde otra regla.',
		date: 'Escriba el día como año, mes y día, por ejemplo 2027-03-14.',
		'date-ahead': 'Ese día aún no llega.',
		judges: 'Ponga al menos tres jueces distintos, uno en cada línea.',
		'too-many-judges': 'Son demasiados nombres.',
		'changed-meanwhile': 'Alguien cambió la regla mientras tanto. Véala de nuevo antes de registrar la revisión.'
	}
};
