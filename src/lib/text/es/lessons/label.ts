import type { LessonText } from '../../lesson-text.ts';

export const label: LessonText = {
	title: 'La etiqueta y la masa',
	able: 'Usted puede leer cada número de las etiquetas y comparar la masa con la menor capacidad.',
	ideas: [
		({ bodyMass, mass }) =>
			`La persona del ejemplo tiene una masa de ${bodyMass}. Pero del arnés cuelgan ${mass}. También cuentan la ropa, el equipo y las herramientas.`,
		() => 'Lo que está atado a la estructura no cae con la persona. No cuenta. Una herramienta en el cinturón sí cuenta.',
		() => 'Absorbedor, arnés y conectores tienen cada uno su capacidad. La menor decide por todos.',
		() => 'La etiqueta tiene dos puntas. Una persona puede ser muy pesada para ella, o muy liviana. A la liviana el frenado le pega más fuerte.',
		() =>
			'Cada número tiene su lugar. El largo va en la caída libre. El alargamiento va en el espacio libre. La fuerza de detención se compara con el límite.',
		() => 'Una etiqueta solo vale dentro de su rango. Fuera de su masa o de su caída libre, sus números no dicen nada.'
	],
	captions: {
		story: ({ name, tied, anchorage }) => `Lea primero la historia. Una bolsa de ${tied} está atada a ${anchorage}, no a ${name}. Téngalo en cuenta.`,
		lengths: ({ length, opens }) => `La cuerda mide ${length}, de gancho a gancho. El absorbedor puede sumar hasta ${opens}. Ese es su alargamiento.`,
		forces: ({ force, wet, average }) =>
			`Aquí hay tres fuerzas. En seco, el máximo es ${force}. Mojado o congelado, es ${wet}. El promedio de ${average} es para entender, nunca para revisar.`,
		range: ({ least, most, limit }) =>
			`Esta etiqueta es para ${least} a ${most} y una caída libre de hasta ${limit}. Fuera de eso no promete nada.`,
		mass: ({ bodyMass, mass, tied }) =>
			`Cuerpo, ropa, equipo y herramientas juntos: de ${bodyMass} se pasó a ${mass}. La bolsa de ${tied} queda fuera.`,
		capacity: ({ most, limit }) => `Ahora las capacidades. El arnés admite ${most}. El absorbedor llega a ${limit}. La menor capacidad decide.`,
		compare: ({ mass, limit, left }) => `Compare ${mass} con ${limit}: sobran ${left}. La masa también pasa de la punta baja del rango.`
	},
	cautions: [
		'Una etiqueta que no se puede leer es como si no hubiera etiqueta. Retire la pieza.',
		'Pésese con todo lo que lleva puesto. A ojo casi siempre sale de menos.',
		'El equipo mojado o congelado puede tirar más. Use el número que se da para eso.',
		'La etiqueta del equipo va antes que una tabla de clases. Las instrucciones del fabricante van con ella.'
	]
};
