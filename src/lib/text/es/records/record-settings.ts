import type { recordSettings as english } from '../../en/records/record-settings.ts';

export const recordSettings: typeof english = {
	title: 'Ajustes de los registros',
	lead: 'Valen desde ahora. Lo aprobado antes vence el día que ya tenía.',
	link: 'Cuánto vale la capacitación y cuánto se guardan los nombres',
	back: 'Volver a los ajustes',
	validityHeading: 'Cuánto vale la capacitación',
	months: 'Vale (meses)',
	monthsHint: 'Solo para ser más estricto que la ley. Déjelo vacío si no quiere un plazo propio.',
	soonHeading: 'Cuándo está por vencer',
	soonDays: 'Por vencer: en cuántos días',
	soonDaysHint: 'De 1 a 365.',
	keepHeading: 'Nombres de quienes se fueron',
	keepMonths: 'Borrar el nombre después de (meses)',
	keepMonthsHint: 'Desde el día en que se fue, 12 como mínimo. Déjelo vacío para guardar los nombres siempre. El registro queda, sin el nombre.',
	keepLaw: 'Algunas leyes piden guardar los registros por años después de que alguien se va. Vea la suya antes de elegir.',
	save: 'Guardar',
	saved: 'Guardado.',
	problems: {
		'bad-months': 'Escriba un número entero de meses de 1 a 120, o déjelo vacío.',
		'not-stricter': 'La ley de aquí es más estricta. Escriba menos meses, o déjelo vacío.',
		'bad-days': 'Escriba un número entero de días de 1 a 365.',
		'bad-keep': 'Escriba un número entero de meses de 12 a 600, o déjelo vacío.'
	}
};
