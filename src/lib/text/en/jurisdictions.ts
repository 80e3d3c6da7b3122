/** Where a rule table holds, by its jurisdiction. */
export const jurisdictions = {
	us: 'United States',
	'ca-on': 'Ontario, Canada',
	'ca-ab': 'Alberta, Canada',
	'ca-qc': 'Quebec, Canada',
	eu: 'European Union',
	uk: 'United Kingdom',
	au: 'Australia'
};
