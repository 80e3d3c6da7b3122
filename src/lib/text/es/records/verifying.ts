import type * as en from '../../en/records/verifying.ts';

export const verifying: typeof en.verifying = {
	title: 'Revisar un certificado',
	lead: 'Escriba el código del papel o pegue una credencial. Verá si todavía vale.',

	given: 'Código o credencial',
	givenHint: 'El código está debajo del cuadro en el papel. Los espacios no importan, las mayúsculas sí.',
	file: 'O un archivo con la credencial',
	fileHint: 'Un archivo de texto de 20 kB a lo más.',
	checkButton: 'Revisar',
	problems: {
		missing: 'Escriba un código o pegue una credencial.',
		'too-long': 'Es muy largo para una credencial. Elija otro archivo u otro texto.',
		'no-code': 'No es un código ni una credencial. Un código tiene 22 signos.'
	},

	standing: {
		valid: 'Válido',
		'theory-only': 'Solo teoría',
		expired: 'Vencido',
		revoked: 'Anulado',
		unknown: 'Desconocido'
	},
	means: {
		valid: 'Esta capacitación está en el registro y hoy cuenta.',
		'theory-only': 'Aprobó la teoría. La parte práctica no está firmada.',
		expired: 'Esta capacitación está en el registro. Ya no cuenta.',
		revoked: 'El empleador anuló este registro. No cuenta.',
		unknown: 'Ningún certificado tiene este código. Compare con el papel, letra por letra.'
	},
	since: ({ day }) => `Anulado desde el ${day}`,
	rows: { course: 'Curso', training: 'Capacitación', scope: 'Sistema', day: 'Día', until: 'Válido hasta', employer: 'Empleador', person: 'Persona', from: 'Válido desde', what: 'Credencial' },
	noEnd: 'Sin fecha de fin',
	erased: 'Identidad borrada',
	caution: 'Esto dice qué está en el registro. No dice quién tiene el papel. No permite ningún trabajo.',

	nameHeading: '¿Es la misma persona?',
	name: 'Nombre en el papel',
	nameHint: 'Los acentos y el orden de los nombres no importan.',
	nameButton: 'Comparar el nombre',
	fits: 'El nombre coincide con este certificado.',
	differs: 'El nombre no coincide con este certificado.',
	nameGone: 'El nombre se borró. Ya no hay nada que comparar.',
	wait: ({ count }) => (count === 1 ? 'Pruebe otra vez en 1 segundo.' : `Pruebe otra vez en ${String(count)} segundos.`),
	waitLong: 'Desde aquí se probaron demasiados nombres. Pregunte al empleador.',
	other: 'Revisar otro',

	credential: {
		holds: 'La credencial vale',
		'not-readable': 'No es una credencial',
		'not-ours': 'No es de las nuestras',
		'wrong-key': 'Firmada con otra clave',
		changed: 'Cambiada después de la firma',
		'not-yet-valid': 'Todavía no vale',
		expired: 'Vencida',
		revoked: 'Anulada'
	},
	credentialMeans: {
		holds: 'Se firmó aquí, nadie la cambió y hoy cuenta.',
		'not-readable': 'El texto no está entero o es otra cosa.',
		'not-ours': 'Nadie de este servidor la dio. Puede valer en otra parte.',
		'wrong-key': 'Dice que viene de aquí. La clave que la firmó no es nuestra.',
		changed: 'El texto y la firma no van juntos. No se fíe de ella.',
		'not-yet-valid': 'Su primer día aún no llega.',
		expired: 'Su último día ya pasó, o se pidió otra capacitación.',
		revoked: 'El empleador la anuló. No cuenta.'
	}
};
