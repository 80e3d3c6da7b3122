import type { exporting as english } from '../../en/records/exporting.ts';

export const exporting: typeof english = {
	title: 'Exportar',
	lead: 'Registros en archivos, para quien inspecciona o para otros programas. Cada descarga queda anotada.',
	today: 'Como está hoy',
	byDays: 'Por días',
	byDaysLead: 'Deje vacíos los dos días para tener todo.',
	from: 'Primer día',
	to: 'Último día',
	problems: {
		'not-a-day': 'Escriba año, mes y día, como 2026-03-14.',
		'ends-before': 'Este día es anterior al primero.'
	},
	spreadsheet: 'Para una hoja de cálculo',
	spreadsheetDetail: 'Una marca al inicio del archivo dice al programa cómo leer las letras con tilde.',
	download: 'Descargar',
	files: {
		'people.csv': 'Todas las personas: cuadrillas, estado de hoy y hasta cuándo vale.',
		'completions.csv': 'Cada curso aprobado y cada capacitación previa, con todo lo que guarda su registro y quién firmó.',
		'retraining.csv': 'Cada orden de repetir el curso y qué pasó con ella.',
		'answers.csv': 'Cada respuesta de las pruebas que ya acabaron: lo escrito, el valor correcto y la nota.',
		'log.csv': 'Quién hizo qué, con todo lo anotado.',
		'everything.json': 'Todos los registros en un archivo, con la cadena y sus claves. Otros lo pueden revisar con sus propios medios. Tiene nombres: guárdelo bien.'
	},
	guard: 'Un texto que la hoja de cálculo tomaría por fórmula lleva un apóstrofo delante.'
};
