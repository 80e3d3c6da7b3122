import type { LessonText } from '../../lesson-text.ts';

export const swing: LessonText = {
	title: 'El péndulo y el camino del cuerpo',
	able: 'Usted puede calcular la bajada del péndulo y ver qué tocaría el cuerpo en todo su camino.',
	ideas: [
		({ sideways, drop }) => `En el ejemplo el anclaje está ${sideways} a un lado. En el péndulo el cuerpo baja ${drop} más.`,
		() => 'Con más distancia lateral hay más bajada del péndulo. Primero crece poco y después mucho.',
		() => 'Un péndulo vuelve la altura velocidad, de lado. Pegar así contra una pared puede dañar tanto como pegar en el suelo.',
		() => 'El cuerpo no para bajo el anclaje. Sigue hasta el otro lado. Mire todo el camino, y todo el cuerpo.',
		() => 'El punto más bajo queda justo debajo del anclaje. Mida allí el lugar, no solo debajo de la persona.',
		() => 'Con el anclaje justo arriba no hay péndulo. Mueva el anclaje o trabaje más cerca de él.',
		() => 'Y la línea debe llegar. Un camino inclinado es más largo de lo que parece.'
	],
	captions: {
		look: ({ name, sideways, anchorage, length }) =>
			`${name} trabaja ${sideways} a un lado. Desde allí la cuerda de ${length} va inclinada hasta ${anchorage}.`,
		tight: ({ falls }) => `Tras ${falls} de caída libre la línea inclinada queda tensa. Frena una parte. El resto se vuelve péndulo.`,
		drop: ({ length, drop }) => `En el punto bajo los ${length} cuelgan derechos. Eso es ${drop} más hondo. Esta es la bajada del péndulo.`,
		low: ({ anchorage, speed }) => `Aquí está el punto más bajo, justo debajo. Arriba queda ${anchorage}. El cuerpo va de lado, a ${speed}.`,
		far: () => 'El péndulo sigue y sube por el otro lado. Nada puede estar en este camino.',
		needed: ({ drop, required }) => `La bajada del péndulo de ${drop} es parte del espacio libre requerido. En total da ${required}.`,
		hit: ({ thing, speed }) => `Otro plan. Ya pasó el punto bajo. Entonces el cuerpo toca ${thing} al otro lado, a ${speed}. No queda detenido.`
	},
	cautions: [
		'Un borde corta como sierra la línea que se balancea sobre él. Una línea sobre un borde pide equipo hecho para bordes.',
		'No juzgue un péndulo solo por su ángulo. Con una línea más larga, el mismo ángulo baja más.',
		'Cada paso a lo largo del borde agranda el péndulo. No vaya más lejos de lo planeado.',
		'Un tubo, una escalera o una esquina pueden ser lo que el cuerpo golpea.'
	]
};
