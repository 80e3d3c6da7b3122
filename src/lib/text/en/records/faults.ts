/** What a visitor is told when the server cannot do its part. */
export const faults = {
	noRoom: 'There is no room on the server’s disk. Nothing was stored. Send it again later.'
};
