import type { LessonText } from '../../lesson-text.ts';

export const beforeAndAfter: LessonText = {
	title: 'Antes y después',
	able: 'Usted puede ver en el equipo, en la gente y en el lugar qué se debe corregir antes de engancharse.',
	ideas: [
		() =>
			'Pregunte primero cómo no caer. Una baranda va primero. También una línea tan corta que no llega al borde: eso es restricción.',
		() => 'Que algo se vea fuerte no lo hace un anclaje. Una persona competente o calificada dice cuál se usa y para cuántos.',
		() => 'Revise su equipo antes de cada uso. Basta un corte, una costura abierta, un gancho doblado o una etiqueta que falta: fuera de uso.',
		() => 'Un arnés solo sirve puesto como se debe: argolla D entre los omóplatos, correas planas, perneras ajustadas.',
		() => 'Los conectores deben ir bien con lo que sujetan. El cierre está cerrado, y nada aprieta en él ni en la punta.',
		() =>
			'La cuerda doble es para avanzar. Un ramal sujeta siempre. Deje el ramal libre en una lengüeta que se rompe: en una argolla fija puede anular el absorbedor.',
		() => 'El plan de rescate se hace antes del trabajo. Colgar quieto en un arnés puede dañar en pocos minutos.'
	],
	captions: {
		restraint: () => 'Mire cada lado del techo. Donde no hay baranda, la línea termina antes del borde. Aquí nadie puede caer, y a nadie hay que detener.',
		place: () =>
			'Hay tres errores. Una baranda no es un anclaje. Dos personas usan lo que es para una. Y la línea pasa por un borde que puede cortarla.',
		inspection: () =>
			'Una costura se abrió. Una pernera tiene un corte. El polvo y los roces por sí solos no dañan. Este arnés queda fuera de uso.',
		donning: () =>
			'No hay nada roto, pero está mal puesto. La cuerda va al cinturón y no a la argolla D. Las perneras están flojas. Corrija primero.',
		connectors: () => 'Hay tres enganches malos. Un gancho cuelga de otro gancho. Un cierre aprieta en una barra. Un gancho sujeta solo con la punta.',
		'legs-wrong': () =>
			'El único ramal en uso está abajo. Eso da una larga caída libre. Y el ramal libre cuelga de una argolla fija de la cadera. Puede anular el absorbedor.',
		'legs-right': () =>
			'Ahora está bien. Quien avanza tiene los dos ramales puestos. Quien trabaja usa uno, enganchado arriba. El ramal libre va en una lengüeta que se rompe.',
		steel: () =>
			'Una línea rodea la viga y vuelve a engancharse en sí misma. Solo el equipo hecho para eso se engancha así. Y hay dos absorbedores en fila.',
		rescue: () => '¿Quién ayuda aquí? Nadie espera, y el paso está cerrado. Una llamada no es un plan de rescate. No empiece.'
	},
	cautions: [
		'Una persona por anclaje, salvo que el permiso del anclaje diga más.',
		'El equipo que detuvo una caída queda fuera de uso. Solo una persona competente puede aprobarlo, y solo si el fabricante lo admite.',
		'No una nunca dos absorbedores en fila. No se reparten el trabajo, y ninguna etiqueta vale para los dos.',
		'Rodee y enganche de vuelta solo con equipo hecho para eso.',
		'Las líneas sobre bordes piden piezas hechas para bordes. Aquí no se tratan.',
		'En la obra usted debe hacer todo esto con sus manos, junto a alguien que sepa. Una pantalla no lo reemplaza.'
	]
};
