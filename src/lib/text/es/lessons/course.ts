import type { course as en } from '../../en/lessons/course.ts';

export const course: typeof en = {
	title: 'Curso inicial: cuerda con absorbedor de energía',
	scope: 'Cuerda con absorbedor de energía',
	lead: 'Planifique su propio amarre con una cuerda y un absorbedor de energía, desde la etiqueta hasta el veredicto.',
	coversHeading: 'Lo que trata el curso',
	covers: 'Un arnés de cuerpo completo, una cuerda con absorbedor de energía y un anclaje rígido.',
	notCoveredHeading: 'Lo que el curso no trata',
	notCovered: {
		'self-retracting-device': 'Dispositivos retráctiles',
		'horizontal-lifeline': 'Línea de vida horizontal',
		'vertical-lifeline': 'Línea de vida vertical',
		'travel-restraint-plans': 'Cómo calcular una línea de restricción; solo que va primero',
		'line-over-edge': 'Líneas sobre un borde',
		positioning: 'Posicionamiento en el trabajo',
		'rope-access': 'Trabajo con dos líneas, para llegar',
		'climbing-and-platforms': 'Rieles de ascenso y plataformas motorizadas',
		'guardrails-nets-covers': 'Cómo montar barandas, redes y tapas',
		'hands-on-practice': 'Práctica con las propias manos',
		'site-plan': 'El plan y las reglas de su propia obra'
	},
	ideasHeading: 'En pocas palabras',
	factsHeading: 'Lo que dice la regla de aquí',
	cautionsHeading: 'Tenga cuidado',
	stepOf: ({ n, of }) => `Paso ${String(n)} de ${String(of)}`
};
