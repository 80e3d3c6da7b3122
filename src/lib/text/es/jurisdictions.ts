import type * as en from '../en/jurisdictions.ts';

export const jurisdictions: typeof en.jurisdictions = {
	us: 'Estados Unidos',
	'ca-on': 'Ontario, Canadá',
	'ca-ab': 'Alberta, Canadá',
	'ca-qc': 'Quebec, Canadá',
	eu: 'Unión Europea',
	uk: 'Reino Unido',
	au: 'Australia'
};
