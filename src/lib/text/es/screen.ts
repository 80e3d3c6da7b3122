import { pluralOf } from '../plural.ts';
import type * as en from '../en/screen.ts';

const plural = pluralOf('es');

export const screen: typeof en.screen = {
	stop: 'Parar aquí',
	answersCaption: 'Sus respuestas y su revisión',
	cases: 'Qué caída se muestra',
	waiting: ({ count }) =>
		plural(count, { one: 'Sin señal. 1 respuesta espera en este equipo.', other: `Sin señal. ${String(count)} respuestas esperan en este equipo.` }),
	tapesText: ({ needed, own }) => `Se necesita: ${needed}. Su cinta: ${own}.`,
	walkRead: ({ the }) => `Léalo: ${the}.`,
	likeIt: 'Otro parecido',
	noScript: 'Las respuestas se revisan con scripts. Por favor, actívelos.'
};
