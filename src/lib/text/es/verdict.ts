import type * as en from '../en/verdict.ts';

export const verdict: typeof en.verdict = {
	heading: 'Veredicto',
	passes: 'Cumple los puntos revisados.',
	fails: ({ checks }) => `No cumple: ${checks}.`,
	cannotBeShown: ({ checks }) => `No se puede mostrar que baste: ${checks}. No se amarre.`,
	decision: { 'tie-off': 'Amarrarse', 'do-not-tie-off': 'No amarrarse' },
	nearest: ({ check, amount }) => `Lo más cerca de no cumplir: ${check}. Sobran ${amount}.`,
	allChecks: 'Todos los puntos',
	doesNotDecide: 'De memoria: no decide nada hasta que se confirme.',
	caution:
		'Esto es una ayuda para practicar, no una herramienta de diseño. En la obra valen las instrucciones del fabricante, la ley local y una persona competente o calificada.',
	cautionLong: [
		'Underfoot sirve para practicar. Revisa los puntos que nombra y ninguno más.',
		'No sabe nada de su obra, de su equipo ni del estado en que están.',
		'Ninguna respuesta de este programa permite ni prohíbe un trabajo.',
		'Lea las instrucciones del fabricante. Cumpla la ley local. Que decida una persona competente o calificada.'
	]
};
