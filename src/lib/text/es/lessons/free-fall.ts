import type { LessonText } from '../../lesson-text.ts';

export const freeFall: LessonText = {
	title: 'Caída libre: arriba, a la par, abajo',
	able: 'Usted puede calcular cuánto cae el cuerpo hasta que la línea queda tensa.',
	ideas: [
		() => 'La caída empieza en la argolla D. El cuerpo cae suelto hasta que la línea queda tensa. Esa bajada es la caída libre.',
		({ length, falls }) =>
			`La caída libre no es el largo de la cuerda. En el primer plan la cuerda mide ${length}. Pero la caída libre es solo de ${falls}.`,
		() =>
			'Lo que cuenta es la altura del gancho. Si se engancha más arriba de la argolla D, parte de la línea ya va hacia arriba. La caída libre es más corta.',
		() =>
			'Si se engancha a la par de la argolla D, se cae toda la línea. Si se engancha más abajo, se cae más que el largo de la línea.',
		() =>
			'Una correa entre el anclaje y la cuerda es un conector. Es parte de la línea. Mida desde el punto que la sostiene, no desde su punta.',
		() => 'La holgura no se suma aparte. Ya está en el largo de la línea. No la cuente dos veces.'
	],
	captions: {
		'above-look': ({ name, dRingAt, anchorageAt, length }) =>
			`Lea tres números. La argolla D de ${name} está a ${dRingAt}. El anclaje está a ${anchorageAt}. La cuerda mide ${length}.`,
		'above-rise': ({ rises }) => `¿Cuánto está el anclaje sobre la argolla D? Reste una altura de la otra. El desnivel es ${rises}.`,
		'above-fall': ({ length, rises, falls }) =>
			`La línea menos el desnivel es la caída libre: ${length} menos ${rises} da ${falls}. Aquí la línea queda justo tensa.`,
		level: ({ length, falls }) =>
			`Ahora el anclaje está casi a la par de la argolla D. La cuerda mide ${length} y la caída libre es ${falls}. El cuerpo cae casi toda la línea.`,
		'below-look': ({ anchorageAt, strap, length }) =>
			`Ahora el anclaje está bajo, a ${anchorageAt}. Una correa de ${strap} lo rodea, suelta. La cuerda de ${length} va enganchada a la correa.`,
		'below-line': ({ strap, length, falls }) =>
			`Correa y cuerda son una sola línea: ${strap} y ${length}. El anclaje está bajo la argolla D, así que esa altura se suma. La caída libre es ${falls}.`,
		'below-fall': ({ falls, speed }) =>
			`Tras ${falls} de caída libre la línea queda tensa. El cuerpo ya va a ${speed}. Compare la caída libre con el límite de la regla de aquí.`
	},
	cautions: [
		'Un anclaje bajo es la forma más común de pasar el límite de caída libre. Busque primero uno más alto.',
		'No haga un nudo para acortar la cuerda. Un nudo le quita mucha resistencia.',
		'Si la línea no llega a un anclaje alto, así no se puede montar. No trabaje de puntillas para alcanzarlo.',
		'Las instrucciones del fabricante pueden pedir una caída libre más corta que la ley. Vale la más corta.'
	]
};
