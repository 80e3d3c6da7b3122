import { pluralOf } from '../plural.ts';
import type { mastery as en } from '../en/mastery.ts';

const plural = pluralOf('es');

export const mastery: typeof en = {
	ready: {
		heading: 'Cómo decide la práctica que usted está listo',
		lead: 'Una cifra elige lo que sigue. Una serie de respuestas correctas decide.',
		estimateHeading: 'La cifra',
		estimate: [
			() => 'Cada lección tiene una cifra de 0 a 100, y también cada destreza en ella. Dice qué tan probable es que usted la tenga.',
			({ start }) => `Empieza en ${start}. Una respuesta correcta la sube, y una mala la baja.`,
			({ guess, slip }) => `Sin la destreza, se supone que se acierta ${guess} veces de 100. Con ella, se supone que se falla ${slip} veces de 100.`,
			({ learn }) => `Un problema hecho a solas enseña lo que falta ${learn} veces de 100. Así crece la cifra.`,
			() => 'El problema que sigue es de otro tipo que el último. Es tan difícil como a usted le sirve, y pide lo menos cierto.'
		],
		rowHeading: 'La serie',
		row: [
			(of) => `Una lección está lista cuando su cifra es ${of.ready} o más, y detrás hay una serie de respuestas correctas.`,
			(of) => `La serie pide ${of.inRow} primeros intentos o más, todos bien y sin ayuda. Entre los últimos ${of.inRow} hay al menos ${of.levels} grados de dificultad.`,
			(of) => `La serie debe ser muy larga para el azar. De las series que se adivinan, llega a lo más 1 de ${of.rare}.`,
			(of) => `Un número escrito se adivina ${of.guess} veces de 100. Un dibujo o una lista se adivina más, y por eso su serie es más larga.`,
			(of) => `Tras ${of.stuck} problemas sin estar listo, se avisa al instructor. Desde entonces vale 1 de ${of.rarer}.`,
			(of) => `En la lección misma hacen falta ${of.wanted} respuestas correctas sin ayuda antes de su prueba.`,
			() => 'Una lección lista abre la que sigue. Está dominada cuando usted acierta también otro día.'
		],
		helpHeading: 'Ayuda',
		help: [
			() => 'Una respuesta correcta con ayuda no sube nada. Una mala baja la cifra, y la serie empieza de nuevo.',
			({ wrong }) => `En los ejemplos a medias se dan algunos pasos, y por eso cuentan como ayuda. Tras ${wrong} respuestas malas en uno, viene otro más fácil.`
		],
		severalHeading: 'Un problema, varias destrezas',
		several: [
			'Un problema cuenta una vez para cada lección de la que pregunta. Allí está bien solo si todo está bien.',
			'Una respuesta correcta habla por todas las destrezas que pide. Una mala se anota a la menos cierta.',
			'Un número que está bien con su propio error de antes cuenta como correcto. El error cuenta donde se hizo.',
			'Una decisión cuenta solo si sus números están bien.'
		],
		refreshHeading: 'Repasos',
		refresh: [
			({ days, last }) => `Lo que está listo se pregunta otra vez a los ${days} días, y luego cada ${last} días.`,
			() => 'Una respuesta correcta antes de tiempo o con ayuda no mueve el día. Una mala en el primer intento empieza otra vez desde el primer día.'
		],
		sources:
			'La cifra: modelo de Corbett y Anderson, 1994, de memoria. Los días: los plazos fijos sirven igual que los que crecen, Latimier y otros, 2021. Los demás números los elegimos nosotros, hasta saber más por respuestas reales.'
	},
	check: {
		heading: 'La prueba final',
		lead: ({ rule }) => `Una organización puede elegir otra regla. Esta es la primera: ${rule}.`,
		formsHeading: 'Cómo se arman las preguntas',
		forms: [
			() => 'Cada lugar de la prueba está fijo: de qué lección pregunta y qué tan difícil es. Las tareas y sus números se sacan de nuevo en cada intento.',
			({ first, second, cells }) => `Las primeras ${first} preguntas son de las ${cells} lecciones. Hasta la pregunta ${second}, cada una se preguntó dos veces.`,
			({ fails }) => `Entre las primeras ${plural(fails, { one: 'hay un plan', other: `hay ${String(fails)} planes` })} que se debe rechazar.`,
			() => 'Ninguna pregunta se repite en una prueba, ni vuelve en su próximo intento.',
			({ band }) => `Las tareas para un mismo lugar se parecen. Según nuestra medida, difieren en ${band} logit a lo más. La medida cuenta pasos, números de más y cambios de unidad o signo.`,
			() => 'Todo se saca y se corrige en el servidor. Su aparato recibe solo lo que se ve.'
		],
		ratesHow: 'Las cifras se calculan de forma exacta, con todas las reglas. Detrás no hay personas reales.'
	}
};
