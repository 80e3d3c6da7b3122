import { pluralOf } from '../plural.ts';
import type * as en from '../en/learn.ts';

const plural = pluralOf('es');

export const learn: typeof en.learn = {
	guest: 'Práctica sin cuenta',
	startTitle: 'Empiece el curso',
	goOnWith: ({ title }) => `Siga: ${title}`,
	finalTitle: 'Haga la prueba final',
	doneTitle: 'Aprobó la prueba final',
	begin: 'Empezar',
	goOn: 'Seguir',
	toCheck: 'Ir a la prueba de la lección',
	toFinal: 'Ir a la prueba final',
	practise: 'Abrir un problema de obra',
	toGo: ({ count }) => plural(count, { one: 'Falta más o menos 1 problema para su prueba.', other: `Faltan más o menos ${String(count)} problemas para su prueba.` }),
	readyNow: 'Ya puede hacer su prueba.',

	dueHeading: 'Pendiente',
	nothingDue: 'Hoy no toca ningún repaso.',
	dueToday: 'toca hoy',
	overdue: ({ count }) => plural(count, { one: 'toca desde ayer', other: `toca desde hace ${String(count)} días` }),
	nextDue: ({ day }) => `El próximo repaso toca el ${day}.`,
	refresher: ({ title }) => `Repaso: ${title}`,

	lessonsHeading: 'Las lecciones',
	lesson: ({ n, title }) => `${String(n)}. ${title}`,
	here: 'Usted está aquí',
	states: {
		shut: 'se abre cuando la lección anterior está lista',
		open: 'abierta',
		example: ({ n, of }) => `ejemplo, paso ${String(n)} de ${String(of)}`,
		trying: 'primer problema',
		fading: 'ejemplos a medio hacer',
		practising: ({ n, of }) => `en práctica: ${String(n)} de ${String(of)} seguidos`,
		ready: 'lista para su prueba',
		checking: 'prueba empezada',
		passed: 'aprobada',
		mastered: 'aprobada y dominada'
	},
	finalName: 'Prueba final',
	finalShut: 'se abre cuando todas las lecciones están aprobadas',
	finalOpen: 'abierta',
	finalRunning: 'empezada: siga donde paró',
	finalTomorrow: 'hoy ya no hay más intentos',
	finalLocked: 'su instructor debe abrirla de nuevo',
	finalPassed: 'aprobada',
	finalTries: ({ count }) => plural(count, { one: '1 intento hasta ahora', other: `${String(count)} intentos hasta ahora` }),
	finalGuest: 'para quienes ya se unieron',

	slipsHeading: 'Lo que más falla',
	noSlips: 'Hasta ahora no se halló ningún descuido en sus respuestas.',
	times: ({ count }) => plural(count, { one: 'una vez', other: `${String(count)} veces` }),

	proofHeading: 'Su constancia',
	theory: ({ day }) => `Aprobó la teoría el ${day}.`,
	supervised: 'Estuvo presente un instructor.',
	unsupervised: 'No hubo un instructor presente.',
	missing: 'Falta todavía: un instructor firma lo que usted sabe hacer con sus manos.',
	onlyTheory: 'Hasta entonces es solo una constancia de teoría.',
	noProof: 'La prueba final da una constancia de teoría. Luego un instructor firma lo que usted sabe hacer con sus manos.',
	beforeHeading: 'Antes de unirse',
	before: ({ count }) => plural(count, { one: 'Respondió 1 problema de obra.', other: `Respondió ${String(count)} problemas de obra.` }),
	beforeRight: ({ count }) => plural(count, { one: '1 estuvo bien en todas sus partes.', other: `${String(count)} estuvieron bien en todas sus partes.` }),
	beforeNote: 'Eso fue práctica. No cuenta para las lecciones.',

	guestNote: 'Todas las lecciones están abiertas para practicar. Lo que haga se guarda en este equipo.',
	joinNote: 'Para hacer las pruebas, únase a su cuadrilla.',
	join: 'Unirse a su cuadrilla'
};
