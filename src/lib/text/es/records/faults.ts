import type { RecordMessages } from '../../en/record.ts';

/** What a visitor is told when the server cannot do its part. */
export const faults: RecordMessages['faults'] = {
	noRoom: 'No hay espacio en el disco del servidor. No se guardó nada. Envíelo de nuevo más tarde.'
};
