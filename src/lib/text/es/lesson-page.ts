import { pluralOf } from '../plural.ts';
import type * as en from '../en/lesson-page.ts';

const plural = pluralOf('es');

export const lessonPage: typeof en.lessonPage = {
	course: 'Curso',
	lessonOf: ({ n, of }) => `Lección ${String(n)} de ${String(of)}`,

	exampleHeading: 'Ejemplo mostrado',
	back: 'Atrás',
	next: 'Adelante',
	goOn: 'Ahora haga uno usted',
	goOnAgain: 'Pasar a los ejemplos',
	toPractice: 'Volver a la práctica',
	keys: 'Las teclas de flecha llevan atrás y adelante.',
	seeExample: 'Ver otra vez el ejemplo',
	seeLesson: 'La lección en pocas palabras',
	planOf: ({ title }) => `De la obra: ${title}`,
	stage: 'La caída está quieta en este momento. Muévala con el control.',
	workingCaption: ({ name }) => `Cálculo de: ${name}`,

	jurisdiction: ({ place }) => `Tabla de reglas: ${place}.`,
	changeTable: 'Otras tablas de reglas',
	guestTable: 'La tabla de su empleador toma su lugar cuando usted se une.',
	notDecide: 'Se sabe de memoria: no decide nada hasta que una persona con nombre lo confirme.',

	nextFading: 'Ahora vienen ejemplos a medio hacer.',
	nextShowing: 'El ejemplo viene otra vez.',
	tryingHeading: 'Un primer problema',
	tryingLead: 'Si sale bien, pasa directo a la práctica. Si no, antes vienen ejemplos a medio hacer.',
	practisingHeading: 'Práctica',
	practisingLead: ({ n, of }) => `${String(n)} de ${String(of)} bien seguidos, sin ayuda.`,
	readyHeading: 'Ya puede hacer la prueba de esta lección.',
	readyGuest: 'Únase a su cuadrilla para hacer la prueba. Puede seguir con la práctica.',
	readyLead: 'Hágala ahora, o siga con la práctica.',
	passedLead: 'Esta lección está aprobada. Un repaso la mantiene fresca.',
	checkingLead: 'La prueba de esta lección está empezada.',
	nextProblem: 'Otro problema',
	nextExample: 'Otro ejemplo',
	toLessons: 'A todas las lecciones',
	notOpen: 'Esta lección aún no está abierta. Se abre cuando la lección anterior está lista.',
	answered: 'Este problema ya tiene respuesta. Lo que haga ahora es práctica y no cuenta.',

	fadingHeading: 'Ejemplo a medio hacer',
	fadingLead: ({ given, of }) =>
		given === 0
			? 'Aquí no hay ningún paso dado. Hágalos todos.'
			: `${plural(given, { one: 'El primer paso está dado', other: `Los primeros ${String(given)} pasos están dados` })}, de ${String(of)} en total. Haga los demás.`,
	fadingPicture: 'Aquí las marcas están dadas. Elija qué hacer.',
	fadingPictureAll: 'Aquí no hay nada dado. Marque lo que ve y elija.',
	givenStep: 'Dado',
	yourStep: 'Su paso',
	checkSteps: 'Revisar mis pasos',
	stepsRight: 'Bien, todo.',
	stepsWrong: 'Todavía no. El cálculo está abajo.',

	markFirst: 'Marque primero lo que ve, o diga que no hay nada que marcar.',
	chooseFirst: 'Elija primero una de las respuestas.',
	checkPicture: 'Revisar mi respuesta',
	pictureRight: 'Bien, todo.',
	pictureWrong: 'Todavía no.',
	missed: 'Sin marcar',
	extra: 'Marcado sin necesidad',
	marksRight: 'Sus marcas están bien.',
	choiceRight: 'Su elección está bien.',
	explained: 'Lo que hay que ver',

	notices: {
		'signed-out': 'Su sesión terminó. Entre de nuevo: no se pierde nada, lo que hizo espera en este equipo.',
		elsewhere: 'Este problema se respondió en otra pestaña o en otro equipo. Su respuesta de aquí es práctica y no cuenta.',
		differs: 'Para el servidor esta lección está en otro punto. Vale lo que dice el servidor.',
		refused: 'El servidor no tomó lo que hizo. Abra de nuevo la lección.',
		'not-kept': 'Este equipo ya no guarda nada más. Lo que haga se pierde al cerrar la página.'
	},
	waiting: ({ count }) =>
		plural(count, { one: '1 paso espera en este equipo para enviarse.', other: `${String(count)} pasos esperan en este equipo para enviarse.` }),
	understood: 'Entendido'
};
