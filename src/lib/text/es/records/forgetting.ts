import { pluralOf } from '../../plural.ts';
import type { forgetting as english } from '../../en/records/forgetting.ts';

const plural = pluralOf('es');

export const forgetting: typeof english = {
	title: 'Olvidar un nombre',
	back: 'Volver al registro',
	whatHeading: 'Qué hace esto',
	what: [
		'Se borran de los datos el nombre, los nombres de antes, el número y el correo.',
		'Se cierra la sesión de la persona y ya no está en ninguna lista.',
		'El registro queda y la cadena sigue entera. En lugar del nombre dice «identidad borrada».',
		'Los certificados ya entregados también lo dicen al consultarlos.',
		'No se puede deshacer.'
	],
	notHeading: 'Hasta dónde no llega',
	not: [
		'Las copias y los archivos de antes aún tienen el nombre. Bórrelos cuando venza su plazo.',
		'Lo firmado queda como se escribió: el lugar, y cómo se identificó a la persona.'
	],
	nowHeading: '¿Se puede olvidar ahora?',
	allowed: 'Sí. Nada de lo que hay que guardar necesita este nombre.',
	stillThere: 'No. Esta persona sigue aquí. Marque en el registro que se fue y luego vuelva.',
	keptFor: ({ count }) => plural(count, { one: 'El último certificado se guarda con su nombre 1 mes después de la baja.', other: `El último certificado se guarda con su nombre ${String(count)} meses después de la baja.` }),
	certification: ({ day }) => `No todo. El último certificado se guarda con su nombre. Se puede olvidar desde el ${day}.`,
	signed: 'No todo. Esta persona firmó registros de otras. El nombre queda mientras una de ellas tenga nombre aquí.',
	goesNow: 'Se borra ahora: PIN o contraseña, correo, idioma, cuadrillas y nombres de antes que ningún registro muestra.',
	staysNow: 'Queda por ahora: el nombre y el número.',
	before: ({ day }) => `Este nombre se olvidó el ${day}.`,
	formHeading: 'Confirme',
	reason: 'Por qué',
	reasons: { 'asked-for': 'La persona lo pidió', 'kept-long-enough': 'Ya venció el plazo' },
	number: 'Número personal de esta persona',
	name: 'Nombre de esta persona',
	typeIt: ({ what }) => `Escriba ${what}, para que no sea otra persona.`,
	forgetButton: 'Olvidar este nombre',
	reduceButton: 'Borrar todo menos el nombre',
	refuseButton: 'Anotar que se negó',
	refuseLead: 'Puede anotar que se pidió y que se negó.',
	problems: { 'not-meant': 'No es la persona de esta página.', missing: 'Complete este campo.', 'not-listed': 'Elija una opción de la lista.' },
	problemsTitle: 'No se hizo nada. Mire los campos marcados.',
	forgotten: 'El nombre está olvidado.',
	reduced: 'Se borró todo menos el nombre. El historial dice qué quedó y por qué.',
	refused: 'Anotado: se pidió y se negó. No se borró nada.'
};
