import { pluralOf } from '../plural.ts';
import type * as en from '../en/screen.ts';

const plural = pluralOf('es');

export const screen: typeof en.screen = {
	stop: 'Parar aquí',
	checkWaits: 'Sus respuestas se revisan en cuanto llegue el resto de esta página.',
	answersCaption: 'Sus respuestas y su revisión',
	cases: 'Qué caída se muestra',
	waiting: ({ count }) =>
		plural(count, { one: '1 respuesta espera en este equipo para enviarse.', other: `${String(count)} respuestas esperan en este equipo para enviarse.` }),
	tapesText: ({ needed, own }) => `Se necesita: ${needed}. Su cinta: ${own}.`,
	walkRead: ({ the }) => `Léalo: ${the}.`,
	likeIt: 'Otro parecido',
	fields: {
		margin: 'Margen',
		stretch: 'Deslizamiento y estiramiento',
		dRingHeight: 'Altura de la argolla D',
		bodyHeight: 'Estatura',
		halfBodyWidth: 'Medio ancho de un cuerpo',
		averageForce: 'Fuerza promedio',
		averageForceConditioned: 'Fuerza promedio, mojado o congelado',
		peakForce: 'Fuerza de detención, como máximo',
		peakForceConditioned: 'Fuerza de detención mojado o congelado, como máximo',
		deploymentMax: 'Alargamiento, como máximo',
		massMin: 'Usuario con herramientas, al menos',
		massMax: 'Usuario con herramientas, como máximo',
		freeFallMax: 'Caída libre, como máximo'
	},
	cautiousMore: 'Más es más cauto.',
	cautiousLess: 'Menos es más cauto.',
	noScript: 'Las respuestas se revisan con scripts. Por favor, actívelos.'
};
