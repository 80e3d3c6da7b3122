import type { LessonText } from '../../lesson-text.ts';

export const availableClearance: LessonText = {
	title: 'Espacio libre disponible y veredicto',
	able: 'Usted puede hallar el espacio que hay, compararlo con el que hace falta y decidir.',
	ideas: [
		({ lowerLevel, depth, available }) => `En el primer plan hay ${depth} hasta ${lowerLevel}. Pero solo cuentan ${available}. Algo puede estar allí.`,
		() => 'El nivel inferior es lo primero que el cuerpo tocaría. Puede ser el suelo, una carga, una viga, un tanque o agua.',
		() => 'Lo que va y viene cuenta a su mayor altura. Si un camión puede estar allí, cuéntelo como si estuviera.',
		() => 'Lo que está a un lado solo cuenta si el cuerpo puede tocarlo. Mire todo el camino, con el péndulo.',
		() => 'Mida los dos espacios libres desde el mismo lugar, el requerido y el disponible. Desde dos lugares no se pueden comparar.',
		() => 'Si un punto no cumple, o si algo no se sabe, la respuesta es: no se amarre.'
	],
	captions: {
		look: ({ surface, lowerLevel, depth, thing, top }) =>
			`Mire hacia abajo desde ${surface}. Hay ${depth} hasta ${lowerLevel}. A veces está allí ${thing}, con ${top} de alto. Ahora no está.`,
		available: ({ depth, top, available }) =>
			`Puede llegar, así que cuenta. De ${depth} se quitan ${top} y quedan ${available}. Ese es el espacio libre disponible.`,
		aside: ({ top }) => `También hay una máquina de ${top}, pero a un lado. El cuerpo no pasa por allí. No cuenta.`,
		compare: ({ surface, required, available }) =>
			`Los dos desde ${surface}: hacen falta ${required} y hay ${available}. No alcanza. No se amarre.`,
		hit: ({ thing, time, speed }) => `Otro plan, con menos lugar. A los ${time} los pies tocan ${thing}, a ${speed}. Esta caída no se detiene.`,
		fits: ({ required, available, left }) => `Un tercer plan: hacen falta ${required} y hay ${available}. Sobran ${left}.`,
		passes: ({ margin }) => `El cuerpo cuelga y el margen de ${margin} sigue libre. Lo demás también cumple. Este plan cumple los puntos revisados.`
	},
	cautions: [
		'Mida hasta lo que puede estar allí en el peor día, no hasta lo que está hoy.',
		'El agua, un tanque y una máquina también son un nivel inferior.',
		'Si es muy justo para decidir, no se amarre. Busque primero un anclaje más alto.',
		'Lo que no se sabe no basta. Pregunte antes de engancharse.'
	]
};
