import { pluralOf } from '../plural.ts';
import type { ownSets as english } from '../en/own-sets.ts';

const plural = pluralOf('es');

export const ownSets: typeof english = {
	heading: 'De su instructor',
	notStarted: ({ count }) => plural(count, { one: '1 problema', other: `${String(count)} problemas` }),
	underWay: ({ n, of }) => `${String(n)} de ${String(of)} respondidos`,
	again: ({ n }) => `sigue la ronda ${String(n)}`,
	done: 'aprobada',
	due: ({ day }) => `para el ${day}`,
	dueToday: 'para hoy',
	late: ({ day }) => `con retraso: era para el ${day}`,
	doneLate: 'después de su día',
	doneHeading: ({ count }) => plural(count, { one: '1 serie que aprobó', other: `${String(count)} series que aprobó` }),

	problemOf: ({ n, of }) => `Problema ${String(n)} de ${String(of)}`,
	round: ({ n }) => `ronda ${String(n)}`,
	ruleAll: 'Para aprobar, todos deben estar bien.',
	rule: ({ right, of }) => `Para aprobar: ${String(right)} de ${String(of)} bien.`,
	ruleNoneUnsafe: 'Ninguna respuesta puede quedar del lado peligroso.',
	ruleUnsafe: ({ count }) =>
		plural(count, { one: 'Solo 1 respuesta puede quedar del lado peligroso.', other: `Solo ${String(count)} respuestas pueden quedar del lado peligroso.` }),
	answered: 'Este problema ya está respondido. Lo que pruebe ahora es práctica y no cuenta.',
	seeResult: 'Ver cómo le fue',
	start: 'Inicio',

	passed: 'Aprobó esta serie',
	notPassed: 'Todavía no la aprueba',
	result: ({ right, of }) => `${String(right)} de ${String(of)} bien.`,
	unsafe: ({ count }) =>
		count === 0 ? 'Ninguna respuesta del lado peligroso.' : plural(count, { one: '1 respuesta del lado peligroso.', other: `${String(count)} respuestas del lado peligroso.` }),
	freshLead: 'La ronda nueva trae problemas nuevos del mismo tipo.',
	fresh: 'Hacerla otra vez',
	freshWaits: 'Los problemas nuevos llegan cuando haya señal.',
	toStart: 'Ir a su inicio',

	notices: {
		'signed-out': 'Ya no está en su cuenta. Entre otra vez: nada se pierde, lo que hizo espera en este dispositivo.',
		elsewhere: 'Esta serie avanzó en otra pestaña o dispositivo, o su instructor la retiró. Su respuesta queda como práctica.',
		refused: 'El servidor no aceptó esta respuesta. Abra la serie otra vez.',
		'not-kept': 'Este dispositivo ya no guarda nada más. Quédese en esta página hasta que se envíen sus respuestas.'
	},
	waiting: ({ count }) =>
		plural(count, { one: '1 respuesta espera en este dispositivo.', other: `${String(count)} respuestas esperan en este dispositivo.` }),
	loadAgain: 'Abrir la serie otra vez'
};
